/** A piece of a gear's outline in the plane, placed: n points, n − 1 lines, all on one segment of one tooth. mm. */
export interface Strand {
  /** x, y of point i at 2i. */
  points: Float64Array;
  /** Segment of the tooth that it lies on. */
  segment: number;
  /**
   * Distance in space over distance in the plane for each line: the cosine of the angle between the swept
   * surface's normal and the plane.
   */
  shortening: Float64Array;
  /** The least of them. */
  leastShortening: number;
  /** Box of each chunk of eight lines: least x, least y, greatest x, greatest y. */
  boxes: Float64Array;
  /** A circle around its points, mm. */
  x: number;
  y: number;
  radius: number;
}

const CHUNK = 8;

/** Whether two strands may be nearer to each other than a distance, mm, as far as the circles around them tell. */
export function mayBeNearer(a: Strand, b: Strand, distance: number): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const apart = Math.sqrt(dx * dx + dy * dy) - a.radius - b.radius;
  return apart * Math.min(a.leastShortening, b.leastShortening) < distance;
}

/**
 * The least normal distance between two strands, or `bound` when none is less; 0 where they cross.
 * Pairs of chunks whose boxes are farther apart than the least distance found are passed over.
 */
export function strandsApart(a: Strand, b: Strand, bound: number): number {
  let found = bound;
  const least = Math.min(a.leastShortening, b.leastShortening);
  for (let i = 0; i < a.boxes.length; i += 4)
    for (let j = 0; j < b.boxes.length; j += 4) {
      const dx = Math.max(0, a.boxes[i] - b.boxes[j + 2], b.boxes[j] - a.boxes[i + 2]);
      const dy = Math.max(0, a.boxes[i + 1] - b.boxes[j + 3], b.boxes[j + 1] - a.boxes[i + 3]);
      if (Math.sqrt(dx * dx + dy * dy) * least < found)
        found = chunksApart(a, (i / 4) * CHUNK, b, (j / 4) * CHUNK, found);
    }
  return found;
}

function chunksApart(a: Strand, fromA: number, b: Strand, fromB: number, bound: number): number {
  let found = bound;
  const endA = Math.min(fromA + CHUNK, a.shortening.length);
  const endB = Math.min(fromB + CHUNK, b.shortening.length);
  for (let i = fromA; i < endA; i++)
    for (let j = fromB; j < endB; j++) {
      const apart = linesApart(a.points, i, b.points, j) * Math.max(a.shortening[i], b.shortening[j]);
      if (apart < found) found = apart;
    }
  return found;
}

/** Distance between line i of `p` and line j of `q`, mm. */
function linesApart(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const ax = p[2 * i];
  const ay = p[2 * i + 1];
  const bx = p[2 * i + 2];
  const by = p[2 * i + 3];
  const cx = q[2 * j];
  const cy = q[2 * j + 1];
  const dx = q[2 * j + 2];
  const dy = q[2 * j + 3];
  const abC = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const abD = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
  const cdA = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
  const cdB = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
  if (abC * abD < 0 && cdA * cdB < 0) return 0;
  return Math.sqrt(
    Math.min(
      pointToLine(ax, ay, cx, cy, dx, dy),
      pointToLine(bx, by, cx, cy, dx, dy),
      pointToLine(cx, cy, ax, ay, bx, by),
      pointToLine(dx, dy, ax, ay, bx, by),
    ),
  );
}

/** Squared distance from a point to the line between two points. */
function pointToLine(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const ux = bx - ax;
  const uy = by - ay;
  const length = ux * ux + uy * uy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / length));
  return (x - ax - t * ux) ** 2 + (y - ay - t * uy) ** 2;
}

/** The `boxes` of a strand. */
export function chunkBoxes(points: Float64Array): Float64Array {
  const lines = points.length / 2 - 1;
  const boxes = new Float64Array(4 * Math.max(0, Math.ceil(lines / CHUNK)));
  for (let at = 0; at < boxes.length; at += 4) {
    const first = at * (CHUNK / 2);
    const last = Math.min(first + 2 * CHUNK, 2 * lines);
    let x0 = points[first];
    let y0 = points[first + 1];
    let x1 = x0;
    let y1 = y0;
    for (let i = first + 2; i <= last; i += 2) {
      x0 = Math.min(x0, points[i]);
      y0 = Math.min(y0, points[i + 1]);
      x1 = Math.max(x1, points[i]);
      y1 = Math.max(y1, points[i + 1]);
    }
    boxes[at] = x0;
    boxes[at + 1] = y0;
    boxes[at + 2] = x1;
    boxes[at + 3] = y1;
  }
  return boxes;
}

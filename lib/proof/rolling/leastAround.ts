import type { Strand } from './outlineDistance.js';

/** How one outline goes on as a mesh turns by a pitch: about an axis, or along x. */
export interface Going {
  /** Radians a pitch, positive counter-clockwise. */
  turn: number;
  /** Its axis, mm. */
  x: number;
  y: number;
  /** mm a pitch towards +x. */
  slide: number;
  /** No point of it that counts lies farther from the axis, mm. */
  reach: number;
}

/** Segments of a tooth whose pairs keep their gap: see `ToothProfile.segments`. */
const FLANKS: readonly number[] = [2, 4];

/**
 * What two outlines come to at least while they go on by up to `half` a window either way, mm; `bound` where it is more.
 * Pairs of flanks are left out: they are involutes of one base pitch (on a bar their straight mates), whose gap
 * along the line of action is the same at every phase (ISO 21771, the law of gearing).
 * Every pair of lines is bounded by the distance along the normal between their nearest points: it changes by the
 * difference of speeds along that normal, which is linear over both lines, and by no more than A half²/2, where
 * A is the sum of both centripetal accelerations.
 * @param half in pitches
 */
export function leastAround(
  first: readonly Strand[],
  mate: readonly Strand[],
  goingFirst: Going,
  goingMate: Going,
  half: number,
  bound: number,
): number {
  const bend =
    ((goingFirst.turn ** 2 * goingFirst.reach + goingMate.turn ** 2 * goingMate.reach) * half ** 2) / 2;
  let found = bound;
  for (const one of first)
    for (const other of mate) {
      if (FLANKS.includes(one.segment) && FLANKS.includes(other.segment)) continue;
      const way = fastest(one, other, goingFirst, goingMate) * half + bend;
      found = strandsAround(one, other, goingFirst, goingMate, half, bend, way, found);
      if (found <= 0) return 0;
    }
  return found;
}

/** No two points of two strands part or near each other faster, mm a pitch. */
function fastest(one: Strand, other: Strand, a: Going, b: Going): number {
  const dx = a.slide - b.slide - a.turn * (one.y - a.y) + b.turn * (other.y - b.y);
  const dy = a.turn * (one.x - a.x) - b.turn * (other.x - b.x);
  return Math.sqrt(dx * dx + dy * dy) + Math.abs(a.turn) * one.radius + Math.abs(b.turn) * other.radius;
}

const CHUNK = 8;

function strandsAround(
  one: Strand,
  other: Strand,
  a: Going,
  b: Going,
  half: number,
  bend: number,
  way: number,
  bound: number,
): number {
  const share = Math.min(one.leastShortening, other.leastShortening);
  const apartX = other.x - one.x;
  const apartY = other.y - one.y;
  const apart = Math.sqrt(apartX * apartX + apartY * apartY) - one.radius - other.radius;
  if ((apart - way) * share >= bound) return bound;
  let found = bound;
  for (let i = 0; i < one.boxes.length; i += 4)
    for (let j = 0; j < other.boxes.length; j += 4) {
      const dx = Math.max(0, one.boxes[i] - other.boxes[j + 2], other.boxes[j] - one.boxes[i + 2]);
      const dy = Math.max(0, one.boxes[i + 1] - other.boxes[j + 3], other.boxes[j + 1] - one.boxes[i + 3]);
      if ((Math.sqrt(dx * dx + dy * dy) - way) * share >= found) continue;
      const fromA = (i / 4) * CHUNK;
      const fromB = (j / 4) * CHUNK;
      const endA = Math.min(fromA + CHUNK, one.shortening.length);
      const endB = Math.min(fromB + CHUNK, other.shortening.length);
      for (let k = fromA; k < endA; k++)
        for (let l = fromB; l < endB; l++) {
          const shortening = Math.max(one.shortening[k], other.shortening[l]);
          const least = (linesAround(one.points, 2 * k, other.points, 2 * l, a, b, half) - bend) * shortening;
          if (least < found) found = least;
        }
    }
  return found;
}

/** Nearest points of two lines: x, y on the first, x, y on the second. */
const NEAREST = new Float64Array(4);

/** The least that the distance of a line of `p` and one of `q` may come to within a window, bending left out, mm. */
function linesAround(
  p: Float64Array,
  i: number,
  q: Float64Array,
  j: number,
  a: Going,
  b: Going,
  half: number,
): number {
  const distance = nearestPoints(p, i, q, j);
  if (distance === 0) return 0;
  const nx = (NEAREST[0] - NEAREST[2]) / distance;
  const ny = (NEAREST[1] - NEAREST[3]) / distance;
  let least = Number.POSITIVE_INFINITY;
  for (let k = i; k <= i + 2; k += 2)
    for (let l = j; l <= j + 2; l += 2) {
      const apart = nx * (p[k] - q[l]) + ny * (p[k + 1] - q[l + 1]);
      const speed =
        nx * (a.slide - b.slide - a.turn * (p[k + 1] - a.y) + b.turn * (q[l + 1] - b.y)) +
        ny * (a.turn * (p[k] - a.x) - b.turn * (q[l] - b.x));
      least = Math.min(least, apart - Math.abs(speed) * half);
    }
  return least;
}

/** Distance of two lines, 0 where they cross; their nearest points go to `NEAREST`. */
function nearestPoints(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const least = { square: Number.POSITIVE_INFINITY };
  const abC = side(p, i, q[j], q[j + 1]);
  const abD = side(p, i, q[j + 2], q[j + 3]);
  const cdA = side(q, j, p[i], p[i + 1]);
  const cdB = side(q, j, p[i + 2], p[i + 3]);
  if (abC * abD < 0 && cdA * cdB < 0) return 0;
  tryPoint(least, p[i], p[i + 1], q, j, 0);
  tryPoint(least, p[i + 2], p[i + 3], q, j, 0);
  tryPoint(least, q[j], q[j + 1], p, i, 2);
  tryPoint(least, q[j + 2], q[j + 3], p, i, 2);
  return Math.sqrt(least.square);
}

/** Twice the area of a line and a point; its sign tells the side. */
function side(p: Float64Array, i: number, x: number, y: number): number {
  return (p[i + 2] - p[i]) * (y - p[i + 1]) - (p[i + 3] - p[i + 1]) * (x - p[i]);
}

/** @param own where in `NEAREST` the point itself goes, 0 or 2 */
function tryPoint(
  least: { square: number },
  x: number,
  y: number,
  line: Float64Array,
  at: number,
  own: 0 | 2,
): void {
  const ux = line[at + 2] - line[at];
  const uy = line[at + 3] - line[at + 1];
  const length = ux * ux + uy * uy;
  const t =
    length === 0 ? 0 : Math.min(1, Math.max(0, ((x - line[at]) * ux + (y - line[at + 1]) * uy) / length));
  const footX = line[at] + t * ux;
  const footY = line[at + 1] + t * uy;
  const square = (x - footX) ** 2 + (y - footY) ** 2;
  if (square >= least.square) return;
  least.square = square;
  NEAREST[own] = x;
  NEAREST[own + 1] = y;
  NEAREST[2 - own] = footX;
  NEAREST[3 - own] = footY;
}

type Point = readonly [number, number];

/**
 * A closed outline with fewer points, none of those left out farther than the tolerance from what is left.
 * Source: D. H. Douglas and T. K. Peucker (1973), from memory.
 */
export function simplified<P extends Point>(outline: readonly P[], tolerance: number): P[] {
  const last = outline.length - 1;
  if (last < 3) return [...outline];
  // The outline falls into two lines between its first point and the one farthest from it.
  const far = farthest(outline, 0, last, (p) => Math.hypot(p[0] - outline[0][0], p[1] - outline[0][1])).at;
  const ring = [...outline, outline[0]];
  const kept = new Uint8Array(ring.length);
  kept[0] = kept[far] = 1;
  const open: [number, number][] = [
    [0, far],
    [far, ring.length - 1],
  ];
  for (let span = open.pop(); span; span = open.pop()) {
    const [from, to] = span;
    const found = farthest(ring, from, to, distanceFrom(ring[from], ring[to]));
    if (found.distance <= tolerance) continue;
    kept[found.at] = 1;
    open.push([from, found.at], [found.at, to]);
  }
  return outline.filter((_, i) => kept[i]);
}

function farthest<P>(
  points: readonly P[],
  from: number,
  to: number,
  distanceOf: (point: P) => number,
): { at: number; distance: number } {
  let [at, distance] = [from, -1];
  for (let i = from + 1; i < to; i++) {
    const found = distanceOf(points[i]);
    if (found > distance) [at, distance] = [i, found];
  }
  return { at, distance };
}

/** Distance of a point from the stretch between two others. */
export function distanceFrom([ax, ay]: Point, [bx, by]: Point): (point: Point) => number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  return ([x, y]) => {
    const along = square > 0 ? ((x - ax) * dx + (y - ay) * dy) / square : 0;
    const t = Math.min(1, Math.max(0, along));
    return Math.hypot(x - ax - t * dx, y - ay - t * dy);
  };
}

type Point = readonly [number, number];

/**
 * A closed outline with fewer points, none of those left out farther than the tolerance from what is left.
 * Source: D. H. Douglas and T. K. Peucker (1973), from memory.
 */
export function simplified<P extends Point>(outline: readonly P[], tolerance: number): P[] {
  const last = outline.length - 1;
  if (last < 3) return [...outline];
  // The outline falls into two lines between its first point and the one farthest from it.
  const far = farthest(outline, 0, last, outline[0], outline[0]).at;
  const ring = [...outline, outline[0]];
  const kept = new Uint8Array(ring.length);
  kept[0] = kept[far] = 1;
  const open: [number, number][] = [
    [0, far],
    [far, ring.length - 1],
  ];
  for (let span = open.pop(); span; span = open.pop()) {
    const [from, to] = span;
    const found = farthest(ring, from, to, ring[from], ring[to]);
    if (found.distance <= tolerance) continue;
    kept[found.at] = 1;
    open.push([from, found.at], [found.at, to]);
  }
  return outline.filter((_, i) => kept[i]);
}

/** Of the points between two of an outline the one farthest from the stretch between `a` and `b`. */
function farthest(
  points: readonly Point[],
  from: number,
  to: number,
  a: Point,
  b: Point,
): { at: number; distance: number } {
  let at = from;
  let most = -1;
  for (let i = from + 1; i < to; i++) {
    const square = squareFrom(a[0], a[1], b[0], b[1], points[i][0], points[i][1]);
    if (square > most) {
      most = square;
      at = i;
    }
  }
  return { at, distance: most < 0 ? -1 : Math.sqrt(most) };
}

/** Square of the distance of a point (x, y) from the stretch between two others. */
export function squareFrom(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((x - ax) * dx + (y - ay) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  const offX = x - ax - t * dx;
  const offY = y - ay - t * dy;
  return offX * offX + offY * offY;
}

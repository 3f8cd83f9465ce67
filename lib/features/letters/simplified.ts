import type { Point } from '../../stack/contour.js';

/**
 * A closed polyline without the points that lie within `off` of the line between the ones kept.
 * Source: Ramer, Douglas and Peucker's division, from memory.
 */
export function simplified(outline: readonly Point[], off: number): Point[] {
  const count = outline.length;
  const [x, y] = outline[0];
  let far = 0;
  outline.forEach((point, i) => {
    const away = (at: Point) => Math.hypot(at[0] - x, at[1] - y);
    if (away(point) > away(outline[far])) far = i;
  });
  const keep = new Set([0, far]);
  const waiting: [number, number][] = [
    [0, far],
    [far, count],
  ];
  while (waiting.length) {
    const [from, to] = waiting.pop()!;
    let [worst, at] = [off, -1];
    for (let i = from + 1; i < to; i++) {
      const distance = toLine(outline[i], outline[from], outline[to % count]);
      if (distance > worst) [worst, at] = [distance, i];
    }
    if (at < 0) continue;
    keep.add(at);
    waiting.push([from, at], [at, to]);
  }
  return [...keep].sort((a, b) => a - b).map((i) => outline[i]);
}

function toLine([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  return Math.abs(dx * (y - ay) - dy * (x - ax)) / Math.hypot(dx, dy);
}

import { radians } from '../../tooth/gear.js';
import { num, type PagePoint } from './svg.js';

/** Parallel lines across a face: their direction (degrees counter-clockwise from the right) and distance (mm). */
export interface Hatch {
  turn: number;
  step: number;
}

/**
 * Path data of the lines that hatch a face: each drawn from edge to edge, so that they print as lines everywhere.
 * @param outlines of the face on the page; where they lie within one another, every second one is a hole
 */
export function hatching(outlines: readonly (readonly PagePoint[])[], { turn, step }: Hatch): string {
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  const met = new Map<number, number[]>();
  for (const outline of outlines)
    for (let i = 0; i < outline.length; i++)
      meetLines(met, outline[i], outline[i + 1 < outline.length ? i + 1 : 0], cos, sin, step);
  const lines = [...met].flatMap(([n, ends]) => {
    const sorted = ends.toSorted((a, b) => a - b);
    const page = (t: number): string => `${num(t * cos + n * step * sin)} ${num(n * step * cos - t * sin)}`;
    return sorted.flatMap((start, i) => (i % 2 === 0 ? [`M${page(start)}L${page(sorted[i + 1])}`] : []));
  });
  return lines.join('');
}

/** Adds where the side from `a` to `b` meets the lines, by the number of each line, as places along it. */
function meetLines(
  met: Map<number, number[]>,
  a: PagePoint,
  b: PagePoint,
  cos: number,
  sin: number,
  step: number,
): void {
  // Across the lines and along them; the page's y runs down.
  const from = (a[0] * sin + a[1] * cos) / step;
  const to = (b[0] * sin + b[1] * cos) / step;
  const start = a[0] * cos - a[1] * sin;
  const end = b[0] * cos - b[1] * sin;
  const high = Math.max(from, to);
  for (let n = Math.ceil(Math.min(from, to)); n < high; n++) {
    const at = start + ((n - from) / (to - from)) * (end - start);
    const others = met.get(n);
    if (others) others.push(at);
    else met.set(n, [at]);
  }
}

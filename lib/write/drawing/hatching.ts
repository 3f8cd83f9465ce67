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
  // Across the lines and along them; the page's y runs down.
  const across = ([x, y]: PagePoint): number => x * sin + y * cos;
  const along = ([x, y]: PagePoint): number => x * cos - y * sin;
  const met = new Map<number, number[]>();
  for (const outline of outlines)
    outline.forEach((a, i) => {
      const b = outline[(i + 1) % outline.length];
      const [from, to] = [across(a) / step, across(b) / step];
      const [low, high] = [Math.min(from, to), Math.max(from, to)];
      for (let n = Math.ceil(low); n < high; n++) {
        const at = along(a) + ((n - from) / (to - from)) * (along(b) - along(a));
        met.set(n, [...(met.get(n) ?? []), at]);
      }
    });
  const lines = [...met].flatMap(([n, ends]) => {
    const sorted = ends.toSorted((a, b) => a - b);
    const page = (t: number): string => `${num(t * cos + n * step * sin)} ${num(n * step * cos - t * sin)}`;
    return sorted.flatMap((start, i) => (i % 2 === 0 ? [`M${page(start)}L${page(sorted[i + 1])}`] : []));
  });
  return lines.join('');
}

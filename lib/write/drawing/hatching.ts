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
  const cos = Math.cos(radians(turn));
  const sin = Math.sin(radians(turn));
  const met = new Map<number, number[]>();
  for (const outline of outlines)
    for (let i = 0; i < outline.length; i++)
      meetLines(met, outline[i], outline[i + 1 < outline.length ? i + 1 : 0], cos, sin, step);
  let lines = '';
  for (const [n, ends] of met) {
    ends.sort((a, b) => a - b);
    for (let i = 0; i + 1 < ends.length; i += 2)
      lines += `M${pagePoint(ends[i], n * step, cos, sin)}L${pagePoint(ends[i + 1], n * step, cos, sin)}`;
  }
  return lines;
}

/** The place on the page of a point by how far it lies along and across the lines, mm. */
function pagePoint(along: number, across: number, cos: number, sin: number): string {
  return `${num(along * cos + across * sin)} ${num(across * cos - along * sin)}`;
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

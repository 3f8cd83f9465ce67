import { refuse } from '../refusal.js';
import { ranges } from '../spec/ranges.js';
import { CrossingOutlines } from './cap.js';
import type { Mesh } from './mesh.js';

/** Shares of the tolerance that are tried where outlines cross at the one asked for. */
const FINER = [0.5, 0.2, 0.05];

/**
 * A body whose faces can all be filled. The rules of room see to that: this is for what should slip through them.
 * @param parameter of the file that the body comes from
 * @param build makes it, its chords within a tolerance, mm
 * @throws Refusal where outlines of the body touch or cross, with a tolerance that has been tried where one helps
 */
export function soundBody(parameter: string, tolerance: number, build: (tolerance: number) => Mesh): Mesh {
  const body = built(tolerance, build);
  if (body) return body;
  const finer = FINER.map((share) => Number((share * tolerance).toPrecision(2)));
  const helps = finer.find((less) => less >= ranges.tolerance[0] && built(less, build) !== null);
  const why = `${parameter} would have outlines that touch or cross`;
  if (helps !== undefined) refuse('too-coarse', 'tolerance', tolerance, `is too coarse: ${why}`, [helps]);
  const rule = 'has outlines that touch or cross, however fine they are drawn';
  refuse('crossing-outlines', parameter, 'as given', rule);
}

/** Null where its faces cannot be filled. */
function built(tolerance: number, build: (tolerance: number) => Mesh): Mesh | null {
  try {
    return build(tolerance);
  } catch (error) {
    if (error instanceof CrossingOutlines) return null;
    throw error;
  }
}

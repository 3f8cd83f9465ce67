import { type Acting, gapOf, slopesOf } from './acting.js';
import { maximise } from './linearProgram.js';

/** Numbers of one part's motion. */
const SIZE = 6;
/** Steps, and how far the first one may go: shifts in mm, turns in radians, which move a tooth about ten times as far. */
const STEPS = 12;
const FIRST = 0.1;
const TURN = 0.1;
/** Overlap that is none, mm, as in `furthest`. */
const TOUCH = 1e-3;
/** Gains below this share of the value are none. */
const GAIN = 1e-3;

/**
 * Goes on from a motion that is allowed to one that reaches farther, as long as there is one beside it: the gaps are
 * taken at the motion itself, and a step that runs into something is shortened. What is returned is allowed too.
 * @param point six numbers of the motion, then six zeros; moved on in place
 * @param weights of the objective
 * @returns the value reached
 */
export function climb(weights: Float64Array, acting: readonly Acting[], point: Float64Array): number {
  const worth = (at: Float64Array) => weights.reduce((sum, weight, k) => sum + weight * at[k], 0);
  let value = worth(point);
  let reach = FIRST;
  for (let step = 0; step < STEPS; step++) {
    const way = bestStep(weights, acting, point, reach);
    const next = allowed(acting, point, way);
    const gained = next ? worth(next) - value : 0;
    if (gained > GAIN * value) {
      point.set(next!);
      value += gained;
    } else if (reach < FIRST / 30) break;
    else reach /= 3;
  }
  return value;
}

/** The best step by the slopes at a motion, no farther than `reach`. */
function bestStep(
  weights: Float64Array,
  acting: readonly Acting[],
  point: Float64Array,
  reach: number,
): Float64Array {
  const rows = new Float64Array((acting.length + 2 * SIZE) * SIZE);
  const bounds = new Float64Array(acting.length + 2 * SIZE);
  const slopes = new Float64Array(2 * SIZE);
  for (const [i, one] of acting.entries()) {
    bounds[i] = Math.max(0, slopesOf(one, point, slopes));
    const from = one.first === 0 ? 0 : SIZE;
    for (let k = 0; k < SIZE; k++) rows[i * SIZE + k] = -slopes[from + k];
  }
  for (let k = 0; k < 2 * SIZE; k++) {
    const i = acting.length + k;
    rows[i * SIZE + (k >> 1)] = k % 2 ? -1 : 1;
    bounds[i] = k >> 1 < 3 ? reach : TURN * reach;
  }
  return maximise(weights, rows, bounds).point;
}

/** The farthest of a few shares of a step that is allowed, null for none. */
function allowed(acting: readonly Acting[], point: Float64Array, way: Float64Array): Float64Array | null {
  for (let share = 1; share > 0.1; share /= 2) {
    const next = point.slice();
    for (let k = 0; k < SIZE; k++) next[k] += share * way[k];
    if (acting.every((one) => gapOf(one, next) >= -TOUCH)) return next;
  }
  return null;
}

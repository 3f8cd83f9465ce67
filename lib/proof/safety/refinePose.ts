import { rotationMatrix } from '../rotationMatrix.js';
import type { Placed } from './poses.js';
import { marginAt, type Pose } from './smallPartsCylinder.js';

/** First step of turning, radians: what lies between two poses of the dense set. */
const FIRST_STEP = 0.1;
/** The search ends when its steps are this small, radians. */
const LAST_STEP = 1e-6;
/** Steps grow after a gain and shrink slowly after a failure: along an edge few directions gain. Found by trying. */
const GROW = 1.5;
const SHRINK = 0.974;

/**
 * Turns and shifts a pose by random steps that grow and shrink with success, keeping what enlarges the margin. The
 * margin has edges, on which methods with derivatives stall; random directions do not. The same start gives the
 * same result always.
 * @param points about their middle, x, y, z of point i at 3i, mm
 * @param reach distance of the farthest point from the middle, mm
 * @param tries most steps tried
 */
export function refinePose(points: Float64Array, start: Placed, reach: number, tries: number): Placed {
  const random = randomNumbers(1);
  let best = { ...start, margin: marginAt(points, start.pose, start.cx, start.cy) };
  let step = FIRST_STEP;
  for (let tried = 0; tried < tries && step > LAST_STEP; tried++) {
    const pose = rotated(best.pose, step * random(), step * random(), step * random());
    const cx = best.cx + step * reach * random();
    const cy = best.cy + step * reach * random();
    const margin = marginAt(points, pose, cx, cy);
    if (margin > best.margin) {
      best = { pose, cx, cy, margin };
      step *= GROW;
    } else step *= SHRINK;
  }
  return best;
}

/** The pose turned by small angles about its own rows, rows kept square to one another. */
function rotated(pose: Pose, a: number, b: number, c: number): Pose {
  const m = rotationMatrix(a, b, c);
  const turned = new Float64Array(9);
  for (let i = 0; i < 3; i++)
    for (let k = 0; k < 3; k++)
      turned[3 * i + k] = m[3 * i] * pose[k] + m[3 * i + 1] * pose[3 + k] + m[3 * i + 2] * pose[6 + k];
  return turned;
}

/**
 * Numbers between −1 and 1 from a seed.
 * Source: the mulberry32 generator by T. Ettinger, public domain.
 */
function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

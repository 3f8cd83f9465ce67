import { bracket } from './bracket.js';
import { ROOMS, type ShiftLimit } from './limits.js';

/** The choice nearest to the ideal that keeps every limit, or what is in the way. */
export type Admissible = { x: number } | { limit: ShiftLimit; room: number; x: number };

type Rooms = (x: number) => readonly number[];

/** Step by which slopes are measured. */
const STEP = 1e-5;
/** Share of the room wanted that counts as all of it: Newton's method comes near from the outside. */
const NEARLY = 0.99;
const MOST_STEPS = 40;

/**
 * The value nearest to `ideal` between `low` and `high` at which every room is at least `margin`. Each room has a
 * single peak along the way, so where one is too small there is only one way to go, and where two call for opposite
 * ways there is nothing to find. Then the room is that where their tangents cross, about the most there is.
 * @param rooms the rooms of `ROOMS` at a value
 * @returns undefined where a room has no slope, so that no tangent says which way to go
 * Source: Newton's method guarded by bisection.
 */
export function admissible(
  rooms: Rooms,
  ideal: number,
  [low, high]: [number, number],
  margin: number,
  width: number,
): Admissible | undefined {
  let [least, most] = [low, high];
  let x = ideal;
  let outside: [number, number] | undefined;
  for (let step = 0; ; step++) {
    const here = rooms(x);
    const worst = here.indexOf(Math.min(...here));
    if (here[worst] >= NEARLY * margin) {
      if (!outside || here[worst] <= 2 * margin) return { x };
      const room = (at: number) => Math.min(...rooms(at)) - margin;
      return { x: bracket(room, [x, here[worst] - margin], outside, width).over };
    }
    outside = [x, here[worst] - margin];
    const none = { limit: ROOMS[worst], room: here[worst], x };
    if (!(most > least) || step === MOST_STEPS) return none;
    const beside = x + STEP <= high ? x + STEP : x - STEP;
    const there = rooms(beside);
    const slope = (i: number) => (there[i] - here[i]) / (beside - x);
    // Of all rooms that are too small, the one that is missing most each way.
    let [up, down] = [-1, -1];
    let [farthestUp, farthestDown] = [0, 0];
    for (let i = 0; i < here.length; i++) {
      if (!(here[i] < NEARLY * margin)) continue;
      const rise = slope(i);
      const move = (margin - here[i]) / rise;
      if (!Number.isFinite(move)) return undefined;
      if (rise > 0 && move >= farthestUp) [up, farthestUp] = [i, move];
      if (rise < 0 && -move >= farthestDown) [down, farthestDown] = [i, -move];
    }
    if (up >= 0 && down >= 0) {
      const [rise, fall] = [slope(up), -slope(down)];
      const room = (here[up] * fall + here[down] * rise) / (rise + fall);
      return { ...none, limit: ROOMS[here[up] < here[down] ? up : down], room: Math.min(room, 0) };
    }
    if (up >= 0) least = Math.max(least, x);
    else most = Math.min(most, x);
    // Nothing more that way.
    if (most - least <= width / 2) return none;
    const next = x + (up >= 0 ? farthestUp : -farthestDown);
    if (next >= least && next <= most) x = next;
    else if (up >= 0) x = most === high && x !== high ? high : (least + most) / 2;
    else x = least === low && x !== low ? low : (least + most) / 2;
  }
}

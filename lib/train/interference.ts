import { involute } from '../tooth/involute.js';
import type { PairSizes } from './pair.js';

type LineSizes = Pick<
  PairSizes,
  'baseRadius1' | 'baseRadius2' | 'centreDistance' | 'workingPressureAngle' | 'formRadius1'
>;

/**
 * Least tip radius of a ring whose tips never reach below the involute of its planet (gear 1).
 * @param pair with `formRadius1`, the start of the planet's true involute [its base circle: the handbook test]
 * @returns mm
 * Source: involute interference test (Elements of Metric Gear Technology 5.2, from memory),
 * z1/z2 ≥ 1 − tan α_a2 / tan α_w, which is r_a2 ≥ √(r_b2² + (a sin α_wt)²); the form radius moves the last
 * usable point along the line of action by √(r_F1² − r_b1²).
 */
export function leastRingTipRadius(pair: LineSizes): number {
  return Math.hypot(pair.baseRadius2, lineLength(pair) + formLength(pair));
}

/**
 * Largest tip radius of an external mate (gear 2) that never reaches below the involute of gear 1.
 * @param pair with `formRadius1`, the start of gear 1's true involute [its base circle]
 * @returns mm
 * Source: as `leastRingTipRadius`, r_a2 ≤ √(r_b2² + (a sin α_wt − √(r_F1² − r_b1²))²).
 */
export function largestMateTipRadius(pair: LineSizes): number {
  return Math.hypot(pair.baseRadius2, Math.max(0, lineLength(pair) - formLength(pair)));
}

/**
 * Room between the tips of planet and ring where their tip circles cross, away from the line of centres
 * (trochoid interference).
 * @param pair a planet (1) and a ring (2)
 * @returns radians of ring rotation, negative when the tips collide; +∞ when the tip circles do not cross
 * Source: Elements of Metric Gear Technology 5.2 (from memory), θ1 z1/z2 + inv α_w − inv α_a2 − θ2.
 */
export function trochoidMargin(pair: PairSizes): number {
  const { centreDistance: a, tipRadius1: r1, tipRadius2: r2, workingPressureAngle } = pair;
  if (r2 >= a + r1) return Number.POSITIVE_INFINITY;
  if (r2 <= r1 - a) return Number.NEGATIVE_INFINITY;
  const { tip1, tip2 } = tipAngles(pair);
  const working = involute(workingPressureAngle);
  const theta1 = Math.acos((r2 * r2 - r1 * r1 - a * a) / (2 * a * r1)) + involute(tip1) - working;
  const theta2 = Math.acos((a * a + r2 * r2 - r1 * r1) / (2 * a * r2));
  return (theta1 * pair.teeth1) / pair.teeth2 + working - involute(tip2) - theta2;
}

/**
 * Room for a planet to be pushed into its ring along the line of centres (trimming).
 * @param pair a planet (1) and a ring (2)
 * @returns radians of planet rotation, negative when it can only enter along the axis; null when the formula
 *   has no real solution, which means the same
 * Source: Elements of Metric Gear Technology 5.2 (from memory),
 * θ1 + inv α_a1 − inv α_w − (z2/z1)(θ2 + inv α_a2 − inv α_w).
 */
export function trimmingMargin(pair: PairSizes): number | null {
  const { tip1, tip2 } = tipAngles(pair);
  const working = involute(pair.workingPressureAngle);
  const ratio = pair.teeth2 / pair.teeth1;
  const cosines = Math.cos(tip1) / Math.cos(tip2);
  const sine1 = Math.sqrt((1 - cosines ** 2) / (1 - ratio ** -2));
  const sine2 = Math.sqrt((cosines ** -2 - 1) / (ratio ** 2 - 1));
  // Written so that the NaN of a negative root is caught too.
  if (!(sine1 <= 1 && sine2 <= 1)) return null;
  const first = Math.asin(sine1) + involute(tip1) - working;
  return first - ratio * (Math.asin(sine2) + involute(tip2) - working);
}

/** Pressure angles at the tip circles; 0 when the ring's tips lie inside its base circle. */
function tipAngles(pair: PairSizes): { tip1: number; tip2: number } {
  return {
    tip1: Math.acos(pair.baseRadius1 / pair.tipRadius1),
    tip2: Math.acos(Math.min(1, pair.baseRadius2 / pair.tipRadius2)),
  };
}

function lineLength(pair: LineSizes): number {
  return pair.centreDistance * Math.sin(pair.workingPressureAngle);
}

function formLength(pair: LineSizes): number {
  const form = Math.max(pair.formRadius1 ?? 0, pair.baseRadius1);
  return Math.sqrt(form * form - pair.baseRadius1 * pair.baseRadius1);
}

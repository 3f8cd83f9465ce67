import { pathOfContact } from './contactRatio.js';
import type { PairSizes } from './pair.js';

/**
 * Specific sliding ζ of both gears of an external pair where each has its largest magnitude: at its own root, where
 * the mate's tip touches.
 * @param pair sizes as made, tip and form radii included
 * @returns pure numbers, negative (0 would be pure rolling); −∞ when contact reaches the base circle
 * Source: ISO 21771, specific sliding ζ_1 = 1 − (z1/z2)(ρ2/ρ1), with the radii of curvature ρ1 + ρ2 = a sin α_wt of
 * the two involutes; ζ_2 the other way round.
 */
export function specificSliding(pair: PairSizes): { first: number; second: number } {
  const line = pair.centreDistance * Math.sin(pair.workingPressureAngle);
  const { start, end } = pathOfContact(pair);
  const ratio = pair.teeth1 / pair.teeth2;
  return { first: slidingAt(ratio, start, line - start), second: slidingAt(1 / ratio, line - end, end) };
}

/**
 * Specific sliding at one point of contact.
 * @param ratio teeth of this gear over those of its mate
 * @param own radius of curvature of its flank there, mm
 * @param other that of its mate, mm
 * Source: as `specificSliding`.
 */
export function slidingAt(ratio: number, own: number, other: number): number {
  return own > 0 ? 1 - (ratio * other) / own : Number.NEGATIVE_INFINITY;
}

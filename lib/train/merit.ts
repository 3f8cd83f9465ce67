import type { ResolvedWanted } from './planWanted.js';

/** Contact ratio from which more adds nothing to the merit: two pairs of teeth always in contact. */
const FULL_ENGAGEMENT = 2;

/**
 * How well a set answers what was asked, 0 … 1: the product of
 * - engagement / 2, at most 1 (two pairs of teeth always in contact);
 * - the share of the circle that planets cover, 1 − planets × opening arc / 360°;
 * - where a ratio is wanted, 1 − |departure| / (2 × tolerance): 1 when met exactly, a half at the tolerance;
 * - where an outer diameter is wanted, outer diameter / the largest wanted.
 * A ranking of our own, no source: nothing is hidden in it, and each factor can be read off the row.
 */
export function merit(
  row: {
    engagement: number;
    planets: number;
    opening: { arc: number };
    ratios: { ringHeld: number; carrierHeld: number; sunHeld: number };
    outerDiameter: number;
  },
  wanted: Pick<ResolvedWanted, 'ratio' | 'outerDiameter'>,
): number {
  const contact = Math.min(1, row.engagement / FULL_ENGAGEMENT);
  const covered = 1 - (row.planets * row.opening.arc) / 360;
  const size = wanted.outerDiameter === null ? 1 : Math.min(1, row.outerDiameter / wanted.outerDiameter);
  return contact * covered * ratioMerit(ratioDeparture(row.ratios, wanted), wanted.ratio?.tolerance) * size;
}

/** Departure of a set's ratio from the one wanted, signs aside; 0 when none is wanted. */
export function ratioDeparture(
  found: { ringHeld: number; carrierHeld: number; sunHeld: number },
  { ratio }: Pick<ResolvedWanted, 'ratio'>,
): number {
  return ratio ? Math.abs(Math.abs(found[`${ratio.held}Held`]) - Math.abs(ratio.value)) : 0;
}

function ratioMerit(departure: number, tolerance = 0): number {
  return tolerance > 0 ? Math.max(0, 1 - departure / (2 * tolerance)) : 1;
}

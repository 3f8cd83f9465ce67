import { gearSizes } from '../tooth/gear.js';
import type { PairSizes } from '../train/pair.js';
import type { SetNumbers } from './train/setOf.js';

/**
 * How far one planet can move along the line of centres, sun and ring staying where they are, mm: toward the sun
 * and toward the ring.
 * Two flanks meet when the movement has used up the gap, at gap / (sin α_wt cos β_b); a tip that meets the other
 * gear's root circle stops it earlier.
 * Source: the normal of both flanks leans by α_wt in the transverse plane and by β_b out of it (ISO 21771).
 */
export function planetPlay({ spec, gears, radii, inner, outer }: SetNumbers): {
  towardSun: number;
  towardRing: number;
} {
  const { sun, planet, ring } = radii;
  const [a, b] = [inner.centreDistance, outer.centreDistance];
  const flank = (pair: PairSizes) =>
    spec.fit.gap / (Math.sin(pair.workingPressureAngle) * Math.cos(gearSizes(gears.planet).baseHelixAngle));
  return {
    towardSun: Math.min(flank(inner), a - sun.tip - planet.root, a - planet.tip - sun.root),
    towardRing: Math.min(flank(outer), ring.root - b - planet.tip, ring.tip - b - planet.root),
  };
}

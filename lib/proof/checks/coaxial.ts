import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { refusalOffer } from '../offer.js';

/** Centre distances that differ by less are equal, mm: rounding of doubles and of shifts given to six places. */
const EQUAL = 1e-4;

/** Sun and ring share one axis only when the planet stands equally far from both. */
export function coaxial({ spec, inner, outer }: PlanFindings): Check {
  const apart = Math.abs(inner.centreDistance - outer.centreDistance);
  const holds = apart <= EQUAL;
  const { sun, planets, ring } = spec;
  const distances = `${inner.centreDistance.toFixed(4)} mm to the sun and ${outer.centreDistance.toFixed(4)} mm to the ring`;
  return {
    id: 'coaxial',
    holds,
    level: 'must',
    value: apart,
    limit: EQUAL,
    unit: 'mm',
    says: holds
      ? `the planets mesh at ${inner.centreDistance.toFixed(4)} mm with both sun and ring`
      : `ring.teeth ${ring.teeth} with sun ${sun.teeth} and planets ${planets.teeth}: the planets would stand ${distances}; ` +
        `without profile shift ring.teeth must be sun + 2 × planets = ${sun.teeth + 2 * planets.teeth}. ${refusalOffer(spec)}`,
  };
}

import { setOf } from '../../fit/train/setOf.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { specShifts } from '../../train/shifts/specShifts.js';
import type { NamingCheck } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { nearestSetsTo, sayNearestSets, shiftOffer } from '../offer.js';

/** Centre distances that differ by less are equal, mm: rounding of doubles and of shifts given to six places. */
const EQUAL = 1e-4;

/** Sun and ring share one axis only when the planet stands equally far from both. */
export function coaxial({ numbers }: PlanFindings<PlanetarySpec>): NamingCheck {
  const { spec, inner, outer } = setOf(numbers);
  const apart = Math.abs(inner.centreDistance - outer.centreDistance);
  const holds = apart <= EQUAL;
  const [toSun, toRing] = [inner, outer].map(({ centreDistance }) => `${centreDistance.toFixed(4)} mm`);
  const sets = holds ? [] : nearestSetsTo(spec);
  return {
    id: 'coaxial',
    holds,
    level: 'must',
    value: apart,
    limit: EQUAL,
    unit: 'mm',
    sets,
    says: holds
      ? `the planets mesh at ${toSun} with both sun and ring${sayShifts(spec)}`
      : `ring.teeth ${spec.ring.teeth} with sun ${spec.sun.teeth} and planets ${spec.planets.teeth}: the planets would stand ` +
        `${toSun} to the sun and ${toRing} to the ring; ${sayHelp(spec)} ${sayNearestSets(sets)}`,
  };
}

/** What solving came to, where the file asks for it and left something to find. */
function sayShifts(spec: PlanetarySpec): string {
  const { outcome } = specShifts(spec);
  if (!outcome) return '';
  if ('refused' in outcome)
    return `; profileShift: solve found no shifts (${outcome.refused}), so shifts not given are left at standard`;
  const { sun, planet, ring, specificSliding } = outcome;
  return (
    `; profile shifts found: sun ${sun.toFixed(4)}, planets ${planet.toFixed(4)}, ring ${ring.toFixed(4)}; ` +
    `largest specific sliding: sun ${specificSliding.sun.toFixed(2)}, planets ${specificSliding.planet.toFixed(2)}`
  );
}

function sayHelp(spec: PlanetarySpec): string {
  const { sun, planets } = spec;
  const { outcome } = specShifts(spec);
  if (outcome && 'refused' in outcome) return `profileShift: solve finds no shifts: ${outcome.refused}.`;
  const plain = `without profile shift ring.teeth must be sun + 2 × planets = ${sun.teeth + 2 * planets.teeth}.`;
  return `${plain} ${shiftOffer(spec)}`;
}

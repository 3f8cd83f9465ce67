import { setOf } from '../../fit/train/setOf.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { leastClearance, planetPlaces } from '../../train/assembly.js';
import type { NamingCheck } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { nearestSetsTo, sayNearestSets } from '../offer.js';

/**
 * Neighbouring planets keep at least the gap between their tip circles, each pair at its own angle.
 * Source: neighbour condition of handbooks, 2 a sin(θ/2) > d_a at the angle θ, equally spaced 2 a sin(π/N) > d_a (from
 * memory); the gap on top is ours.
 */
export function neighbours({ numbers }: PlanFindings<PlanetarySpec>): NamingCheck {
  const { spec, inner, radii } = setOf(numbers);
  const places = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  const clearance = leastClearance(places, inner.centreDistance, radii.planet.tip);
  const holds = clearance >= spec.fit.gap;
  const sets = holds ? [] : nearestSetsTo(spec);
  return {
    id: 'neighbours',
    holds,
    level: 'must',
    value: Number.isFinite(clearance) ? clearance : null,
    limit: spec.fit.gap,
    unit: 'mm',
    sets,
    says: holds
      ? `neighbouring planets pass each other at ${clearance.toFixed(3)} mm`
      : `planets.count ${spec.planets.count}: tip circles of neighbouring planets are ${clearance.toFixed(3)} mm apart and must keep the gap. ${sayNearestSets(sets)}`,
  };
}

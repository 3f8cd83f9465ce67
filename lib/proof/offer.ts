import type { Spec } from '../spec/types.js';
import { nearestSets, type SetCounts } from '../train/nearestSets.js';

/** How many sets a refusal offers. */
const OFFERED = 4;

/** The sets nearest to the file's that work without profile shift, as one sentence. */
export function refusalOffer(spec: Spec): string {
  const asked = {
    sunTeeth: spec.sun.teeth,
    planetTeeth: spec.planets.teeth,
    ringTeeth: spec.ring.teeth,
    planets: spec.planets.count,
  };
  const found = nearestSets(asked, OFFERED, {
    rack: spec.rack,
    pressureAngle: spec.pressureAngle,
    helixAngle: spec.helix.angle,
    clearance: spec.fit.gap / spec.module,
  });
  if (!found.length) return 'No set within twelve teeth of this one works without profile shift.';
  return `Nearest sets that work (sun / planets / ring teeth × planets): ${found.map(show).join('; ')}`;
}

function show({ sunTeeth, planetTeeth, ringTeeth, planets }: SetCounts): string {
  return `${sunTeeth} / ${planetTeeth} / ${ringTeeth} × ${planets}`;
}

import type { PlanetarySpec } from '../spec/types.js';
import { planetPlaces } from '../train/assembly.js';
import { nearestSets } from '../train/nearestSets.js';
import { opening } from '../train/opening.js';
import { unshiftedSets } from '../train/unshiftedSet.js';
import type { Change } from './nearest/changes.js';
import { firstOf } from './nearest/nearestWorking.js';
import { countsOf, unshifted, withCounts } from './nearest/setChanges.js';
import { worksWith } from './nearest/works.js';

/** How many sets are named. */
const OFFERED = 4;
/** All sets within the window of `nearestSets` are looked through: 25 sun by 25 planet counts by 11 planets. */
const ALL = 25 * 25 * 11;

/**
 * The sets nearest to the file's that work without profile shift and into which a straight edge drops no farther
 * than `max`, at the file's module.
 * @param max mm
 * @param edge length of the edge, mm [long enough to rest on two planets]
 */
export function nearestOpenSets(spec: PlanetarySpec, max: number, edge?: number): Change[] {
  const { module, rack, pressureAngle } = spec;
  const form = { rack, pressureAngle, helixAngle: spec.helix.angle };
  const setOf = unshiftedSets(form);
  const open = nearestSets(countsOf(spec), ALL, { ...form, clearance: spec.fit.gap / module }).filter(
    ({ sunTeeth, planetTeeth, ringTeeth, planets }) => {
      const set = setOf(sunTeeth, planetTeeth);
      const sizes = {
        centreDistance: set.centreDistance * module,
        planetTipRadius: set.planetTipRadius * module,
        ringTipRadius: set.ringTipRadius * module,
        sunTipRadius: set.sunTipRadius * module,
      };
      return opening(planetPlaces(sunTeeth, ringTeeth, planets), sizes, edge).drop <= max;
    },
  );
  const changes = open.map((set) => ({ ...withCounts(set), ...unshifted(spec) }));
  return firstOf(changes, OFFERED, (change) => worksWith(spec, change));
}

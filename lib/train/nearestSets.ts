import { clamp } from '../spec/nearest.js';
import { ranges } from '../spec/ranges.js';
import { usual } from '../spec/usual.js';
import { radians } from '../tooth/gear.js';
import { standardRack } from '../tooth/racks.js';
import { allowsEqualSpacing, neighbourClearance } from './assembly.js';
import { ranked } from './ranked.js';
import { type ToothForm, unshiftedSets } from './unshiftedSet.js';

/** The counts that describe a planetary set. */
export interface SetCounts {
  sunTeeth: number;
  planetTeeth: number;
  ringTeeth: number;
  planets: number;
}

/** Tooth counts of sun and planets are changed by at most this much. */
const WINDOW = 12;

/**
 * The sets nearest to what was asked that work without profile shift: coaxial, equally spaced, neighbours clear,
 * teeth in contact all the time. What was asked comes first when it works itself.
 * Nearest: the least change in the number of planets; then the least total change in teeth, each as a share of what
 * was asked (|Δz|/z over sun, planet and ring); then the least change of the ratio with the ring held. Sun and
 * planets are changed by up to 12 teeth.
 * @param most how many to give back [5]
 * @param form rack, angles in degrees, and `clearance`, the least distance between the tip circles of neighbouring
 *   planets in normal modules [profile B at 20°, spur, 0]
 * @returns best first; empty when nothing near works
 */
export function nearestSets(
  asked: SetCounts,
  most = 5,
  form: Partial<ToothForm> & { clearance?: number } = {},
): SetCounts[] {
  const { pressureAngle = usual.pressureAngle, helixAngle = 0, clearance = 0 } = form;
  const [fewest, mostPlanets] = ranges.planets;
  const rack = form.rack ?? standardRack(usual.rack, radians(pressureAngle));
  const setOf = unshiftedSets({ rack, pressureAngle, helixAngle });
  const found = ranked<{ counts: SetCounts; distance: number[] }>(most, compare);
  for (const sunTeeth of around(asked.sunTeeth))
    for (const planetTeeth of around(asked.planetTeeth)) {
      const ringTeeth = sunTeeth + 2 * planetTeeth;
      const set = setOf(sunTeeth, planetTeeth);
      if (!(set.engagement >= 1 && set.tipThickness > 0 && set.trochoidMargin >= 0)) continue;
      for (let planets = fewest; planets <= mostPlanets; planets++) {
        if (!allowsEqualSpacing(sunTeeth, ringTeeth, planets)) continue;
        const between = neighbourClearance(set.centreDistance, planets, set.planetTipRadius);
        if (!(between > 0 && between >= clearance)) continue;
        const counts = { sunTeeth, planetTeeth, ringTeeth, planets };
        found.offer({ counts, distance: distance(asked, counts) });
      }
    }
  return found.kept.map(({ counts }) => counts);
}

/** Order of sets by how near they are to what was asked, as `nearestSets` means it; never calls two sets equal. */
export function byDistance(asked: SetCounts): (a: SetCounts, b: SetCounts) => number {
  return (a, b) => compare({ distance: distance(asked, a) }, { distance: distance(asked, b) });
}

/** Most important first; the last ones only settle ties. */
function distance(asked: SetCounts, counts: SetCounts): number[] {
  const change = (key: 'sunTeeth' | 'planetTeeth' | 'ringTeeth') =>
    Math.abs(counts[key] - asked[key]) / asked[key];
  return [
    Math.abs(counts.planets - asked.planets),
    change('sunTeeth') + change('planetTeeth') + change('ringTeeth'),
    Math.abs(counts.ringTeeth / counts.sunTeeth - asked.ringTeeth / asked.sunTeeth),
    -counts.planets,
    counts.ringTeeth,
    counts.sunTeeth,
  ];
}

function compare(a: { distance: number[] }, b: { distance: number[] }): number {
  const at = a.distance.findIndex((value, i) => value !== b.distance[i]);
  return at < 0 ? 0 : a.distance[at] - b.distance[at];
}

function around(teeth: number): number[] {
  const least = clamp(Math.round(teeth) - WINDOW, ...ranges.teeth);
  const most = clamp(Math.round(teeth) + WINDOW, ...ranges.teeth);
  return Array.from({ length: most - least + 1 }, (_, i) => least + i);
}

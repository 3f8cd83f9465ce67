import { openingSizes, type SetNumbers, setOf } from '../../fit/train/setOf.js';
import { ranges } from '../../spec/ranges.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { allowsEqualSpacing, neighbourClearance, planetPlaces } from '../../train/assembly.js';
import { opening as openingOf } from '../../train/opening.js';
import type { NamingCheck } from '../check.js';
import type { PlanFindings } from '../findings.js';
import type { Change } from '../nearest/changes.js';
import { saySets } from '../nearest/words.js';
import { worksWith } from '../nearest/works.js';
import { nearestOpenSets } from '../nearestOpenSets.js';

const MOST_PLANETS = ranges.planets[1];

/**
 * How far a straight edge drops in between the two planets that are farthest apart. A `must` when the file sets a
 * limit, else a `note`.
 */
export function opening({ numbers }: PlanFindings<PlanetarySpec>): NamingCheck {
  const found = setOf(numbers);
  const { sun, ring, planets, opening: asked } = found.spec;
  const { max, edge } = asked ?? {};
  const places = planetPlaces(sun.teeth, ring.teeth, planets.count);
  const { arc, drop } = openingOf(places, openingSizes(found), edge);
  const holds = max === undefined || drop <= max;
  const offered = holds ? null : offer(found, max!, edge);
  const what = edge === undefined ? 'a long straight edge' : `a straight edge of ${edge} mm`;
  return {
    id: 'opening',
    holds,
    level: max === undefined ? 'note' : 'must',
    value: drop,
    limit: max ?? null,
    unit: 'mm',
    sets: offered?.sets,
    says:
      `the widest arc without a planet is ${arc.toFixed(1)}°; ${what} drops ${drop.toFixed(2)} mm inside the ring's tip circle` +
      (offered ? `; at most ${max} mm is asked. ${offered.says}` : ''),
  };
}

/** More of the same planets when that is enough, else the nearest sets that are. */
function offer(found: SetNumbers, max: number, edge?: number): { says: string; sets?: Change[] } {
  const { spec, inner, radii } = found;
  const { sun, ring, planets } = spec;
  const enough: number[] = [];
  for (let count = planets.count + 1; count <= MOST_PLANETS; count++) {
    if (!allowsEqualSpacing(sun.teeth, ring.teeth, count)) continue;
    if (neighbourClearance(inner.centreDistance, count, radii.planet.tip) < spec.fit.gap) continue;
    const places = planetPlaces(sun.teeth, ring.teeth, count);
    if (openingOf(places, openingSizes(found), edge).drop > max) continue;
    if (worksWith(spec, { 'planets.count': count })) enough.push(count);
  }
  if (enough.length) return { says: `planets.count ${enough.join(' or ')} with the same teeth would pass` };
  const sets = nearestOpenSets(spec, max, edge);
  const none = 'No set within twelve teeth of this one passes at this module';
  return { sets, says: sets.length ? saySets(sets, 'pass') : none };
}

import { floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { usual } from '../../spec/usual.js';
import { nearestSets, type SetCounts } from '../../train/nearestSets.js';
import { along, type Change, just, moduleWay, type Way, type Ways } from './changes.js';

/** Sets that are looked through. */
const SETS = 400;

/** What may be changed about a planetary set. */
export function setWays(spec: PlanetarySpec): Ways {
  const { 'fit.gap': gap, ...form } = standardForm(spec);
  const room = { 'planets.spacing': 'equal', ...(spec.opening ? { opening: undefined } : {}) };
  return {
    single: singleWays(spec),
    counts: (other) => setChanges(other as PlanetarySpec),
    bases: [{ 'fit.gap': gap }, form, { ...form, 'fit.gap': gap }, { ...form, 'fit.gap': gap, ...room }],
  };
}

function singleWays(spec: PlanetarySpec): Way[] {
  const { fit, helix, faceWidth, planets } = spec;
  const count: Way = {
    path: 'planets.count',
    find: (isWorking) =>
      counts(planets.count)
        .map((other) => ({ 'planets.count': other }))
        .find(isWorking),
  };
  const slanted = [
    along('helix.angle', helix.angle, ranges.helixAngle[1]),
    along('faceWidth', faceWidth, Math.min(ranges.faceWidth[1], 4 * faceWidth)),
  ];
  return [
    along('fit.gap', fit.gap, ranges.gap[0]),
    moduleWay(spec),
    count,
    just('planets.spacing', { 'planets.spacing': 'nearest' }),
    just('profileShift', solved(spec)),
    just('profileShift', unshifted(spec)),
    just('rack', { rack: usual.rack }),
    just('pressureAngle', { pressureAngle: usual.pressureAngle }),
    ...(helix.form === 'spur' ? [] : slanted),
  ];
}

/** The sets nearest to the file's that work without shift, as changes. */
export function setChanges(spec: PlanetarySpec): Change[] {
  const { rack, pressureAngle, helix, fit, module } = spec;
  const form = { rack, pressureAngle, helixAngle: helix.angle, clearance: fit.gap / module };
  return nearestSets(countsOf(spec), SETS, form).map((set) => ({ ...withCounts(set), ...unshifted(spec) }));
}

/** The tooth counts of a file. */
export function countsOf({ sun, planets, ring }: PlanetarySpec): SetCounts {
  return {
    sunTeeth: sun.teeth,
    planetTeeth: planets.teeth,
    ringTeeth: ring.teeth,
    planets: planets.count,
  };
}

/** Other tooth counts, as a change. */
export function withCounts({ sunTeeth, planetTeeth, ringTeeth, planets }: SetCounts): Change {
  return {
    'sun.teeth': sunTeeth,
    'planets.teeth': planetTeeth,
    'ring.teeth': ringTeeth,
    'planets.count': planets,
  };
}

/** Teeth of the standard form, and a gap that they have room for: with these some set always works. */
export function standardForm(spec: PlanetarySpec): Change {
  const gap = floorThousandth(Math.max(ranges.gap[0], Math.min(spec.fit.gap, 0.1 * spec.module)));
  return { rack: usual.rack, pressureAngle: usual.pressureAngle, 'fit.gap': gap };
}

/** No shifts, whatever the file gives or asks to find. */
export function unshifted(spec: PlanetarySpec): Change {
  if (!shifted(spec)) return {};
  return { profileShift: 'none', 'sun.profileShift': 0, 'planets.profileShift': 0, 'ring.profileShift': 0 };
}

/** Shifts found by cogweave, whatever the file gives. */
export function solved({ sun, planets, ring }: PlanetarySpec): Change {
  const given = { 'sun.profileShift': sun, 'planets.profileShift': planets, 'ring.profileShift': ring };
  const out = Object.entries(given).filter(([, gear]) => gear.profileShift !== undefined);
  return { profileShift: 'solve', ...Object.fromEntries(out.map(([path]) => [path, undefined])) };
}

function shifted({ profileShift, sun, planets, ring }: PlanetarySpec): boolean {
  return profileShift === 'solve' || [sun, planets, ring].some((gear) => gear.profileShift !== 0);
}

function counts(count: number): number[] {
  const [fewest, most] = ranges.planets;
  const all = Array.from({ length: most - fewest + 1 }, (_, i) => fewest + i).filter(
    (other) => other !== count,
  );
  return all.sort((a, b) => Math.abs(a - count) - Math.abs(b - count) || b - a);
}

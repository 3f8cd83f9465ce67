import { gearFeatures, planetFeatures, ringFeatures } from '../../features/index.js';
import { gapChange } from '../../spec/measuredGaps.js';
import { floorThousandth } from '../../spec/nearest.js';
import { isMapping } from '../../spec/plainData.js';
import { ranges } from '../../spec/ranges.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { usual } from '../../spec/usual.js';
import { withoutDerived } from '../../spec/withoutDerived.js';
import { nearestSets, type SetCounts } from '../../train/nearestSets.js';
import { along, type Change, just, moduleWay, type Way, type Ways } from './changes.js';

/** Sets that are looked through. */
const SETS = 400;

/** What may be changed about a planetary set. */
export function setWays(spec: PlanetarySpec): Ways {
  const { rack, pressureAngle, ...gap } = standardForm(spec);
  const form = { rack, pressureAngle };
  const bare = withoutFeatures(spec);
  const room = { 'planets.spacing': 'equal', ...(spec.opening ? { opening: undefined } : {}), ...bare };
  return {
    single: singleWays(spec),
    counts: (other) => setChanges(other as PlanetarySpec),
    bases: [
      ...(Object.keys(bare).length ? [bare] : []),
      gap,
      form,
      { ...form, ...gap },
      { ...form, ...gap, ...room },
    ],
  };
}

/** What gears have besides their teeth; sizes of it suit the teeth of the file, and may suit no others. */
const FEATURES = {
  sun: ['bore', ...Object.keys(gearFeatures)],
  planets: Object.keys(planetFeatures),
  ring: ['rim', ...Object.keys(ringFeatures)],
};

/** No features, no carrier and no lips, as far as the file gives them. */
function withoutFeatures(spec: PlanetarySpec): Change {
  const file = withoutDerived(spec);
  const bare: Change = {};
  for (const [part, keys] of Object.entries(FEATURES)) {
    const group = file[part];
    for (const key of keys) if (isMapping(group) && isGiven(group[key])) bare[`${part}.${key}`] = undefined;
  }
  if (isGiven(file.carrier)) bare.carrier = undefined;
  // The file may have asked for them either way, and for more than they do.
  if (spec.lips) bare.lips = undefined;
  if (spec.lips) bare.retention = spec.helix.form === 'herringbone' ? 'herringbone' : 'none';
  return bare;
}

function isGiven(value: unknown): boolean {
  if (value === undefined || value === 'none') return false;
  return !(isMapping(value) && value.shape === 'none');
}

function singleWays(spec: PlanetarySpec): Way[] {
  const { fit, helix, faceWidth, planets } = spec;
  const count: Way = {
    path: 'planets.count',
    find: (isWorking) =>
      counts(planets.count)
        .map((other) => ({ 'planets.count': other, ...boltsFor(spec, other) }))
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
  return nearestSets(countsOf(spec), SETS, form).map((set) => ({
    ...withCounts(set),
    ...boltsFor(spec, set.planets),
    ...unshifted(spec),
  }));
}

/** A carrier's bolts go with its planets where there are as many, whether the file says so or leaves them to it. */
function boltsFor({ carrier, planets }: PlanetarySpec, count: number): Change {
  if (carrier === 'none' || carrier.bolts === 'none') return {};
  if (carrier.bolts.count !== planets.count || count === planets.count) return {};
  return { 'carrier.bolts.count': count };
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
  return { rack: usual.rack, pressureAngle: usual.pressureAngle, ...gapChange(spec, gap) };
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

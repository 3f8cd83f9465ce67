import { ceilThousandth, floorThousandth } from '../../spec/nearest.js';
import type { Plain } from '../../spec/plainData.js';
import { Refusal } from '../../spec/refusal.js';
import { resolveSpec } from '../../spec/resolveSpec.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { withoutDerived } from '../../spec/withoutDerived.js';
import { nearestSets, type SetCounts } from '../../train/nearestSets.js';
import { nearestThat } from './nearestThat.js';

/** Values of parameters, by dotted path, that take the place of a file's; undefined leaves a value to be found. */
export type Change = Record<string, unknown>;

/** Sets that are looked through. */
const SETS = 400;

/** The file with values changed; undefined where it would be refused. */
export function changed(spec: PlanetarySpec, change: Change): PlanetarySpec | undefined {
  const file = structuredClone(withoutDerived(spec));
  for (const [path, value] of Object.entries(change)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    let group = file;
    for (const key of keys) {
      group[key] ??= {};
      group = group[key] as Plain;
    }
    if (value === undefined) delete group[last];
    else group[last] = value;
  }
  try {
    return resolveSpec(file) as PlanetarySpec;
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** Changes of one parameter that work, the nearest value of each. */
export function singleChanges(spec: PlanetarySpec, isWorking: (change: Change) => boolean): Change[] {
  const { module, fit, helix, faceWidth, planets } = spec;
  const found: Change[] = [];
  const along = (path: string, from: number, to: number) => {
    const rounded = to < from ? floorThousandth : ceilThousandth;
    const value = nearestThat(from, to, rounded, (tried) => isWorking({ [path]: tried }));
    if (value !== undefined) found.push({ [path]: value });
  };
  along('fit.gap', fit.gap, 0.02);
  along('module', module, Math.min(20, 4 * module));
  const count = counts(planets.count).find((other) => isWorking({ 'planets.count': other }));
  if (count !== undefined) found.push({ 'planets.count': count });
  const others = [
    { 'planets.spacing': 'nearest' },
    solved(spec),
    unshifted(spec),
    { rack: 'B' },
    { pressureAngle: 20 },
  ];
  found.push(...others.filter((change) => Object.keys(change).length && isWorking(change)));
  if (helix.form !== 'spur') {
    along('helix.angle', helix.angle, 45);
    along('faceWidth', faceWidth, Math.min(300, 4 * faceWidth));
  }
  return found;
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
  const gap = floorThousandth(Math.max(0.02, Math.min(spec.fit.gap, 0.1 * spec.module)));
  return { rack: 'B', pressureAngle: 20, 'fit.gap': gap };
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
  const all = Array.from({ length: 11 }, (_, i) => i + 2).filter((other) => other !== count);
  return all.sort((a, b) => Math.abs(a - count) - Math.abs(b - count) || b - a);
}

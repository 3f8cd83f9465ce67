import { notWith } from '../../features/room.js';
import { featuresOf, type One } from '../../features/through.js';
import type { Problem } from '../../refusal.js';
import { gearsOf } from '../kinds.js';
import type { TrainSpec } from '../types.js';
import { partProblems, withoutStanding } from './features.js';
import { madeRootRadius, rootsFollow } from './roots.js';
import { gears, lines, type Rule, toothSizes } from './rule.js';

/** Every feature of the gears of a pair, a rack or a single gear finds room in its part, and beside its mate. */
export const trainFeatureRoom: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [...toothSizes, 'faceWidth', 'fit.gap', ...gears, 'printer.layer', ...lines],
  find(spec) {
    const follow = rootsFollow(spec);
    return trainFeatureProblems(spec, (_, gear) => (follow ? madeRootRadius(spec, gear) : undefined));
  },
};

/** Root radius of a gear as made, mm, by its key in the file; undefined while it is still to be found. */
export type RootOf = (
  part: string,
  gear: { teeth: number; profileShift?: number; internal: boolean },
) => number | undefined;

/**
 * What finds no room. What stands on a gear with teeth outside stays inside its root circle, where no mate comes, and
 * what stands out from one with teeth inside is away from its mate.
 */
export function trainFeatureProblems(spec: TrainSpec, rootOf: RootOf): Problem[] {
  const beside = besideArm(spec);
  if (beside.length) return beside;
  return gearsOf(spec).flatMap((gear) => partProblems(spec, gear.part, gear, rootOf(gear.part, gear)));
}

/**
 * The arm of a crank handle lies on its gear's top face and sweeps over the other gear's: it meets another arm there, and
 * whatever stands.
 */
function besideArm(spec: TrainSpec): Problem[] {
  const [pinion, wheel] = gearsOf(spec);
  if (!wheel) return [];
  const own = armOf('pinion', pinion);
  const others = armOf('wheel', wheel);
  return [
    ...(own && others ? met('wheel', wheel, own, sweeps) : []),
    ...(own ? met('wheel', wheel, own, stands) : []),
    ...(others ? met('pinion', pinion, others, stands) : []),
    ...(own ? withoutStanding('wheel', wheel, `where ${own} is given`) : []),
    ...(others ? withoutStanding('pinion', pinion, `where ${others} is given`) : []),
  ];
}

function armOf(part: string, gear: object): string | undefined {
  const [one] = featuresOf(gear).filter(sweeps);
  return one && `the arm of ${part}.${one.key}.${one.kind.sweeps}, which sweeps over it,`;
}

function met(part: string, gear: object, arm: string, where: (one: One) => boolean): Problem[] {
  const found = featuresOf(gear).filter(where);
  return found.flatMap(({ key, own }) => notWith(`${part}.${key}`, own, arm));
}

function sweeps({ kind, own }: One): boolean {
  return kind.sweeps !== undefined && Reflect.get(own, kind.sweeps) !== undefined;
}

/** What could be asked for without standing is told otherwise. */
function stands({ kind, own }: One): boolean {
  return !kind.flat && (kind.stands?.(own) ?? 0) > 0;
}

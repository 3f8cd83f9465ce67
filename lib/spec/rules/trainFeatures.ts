import { type Problem, problemOf } from '../../refusal.js';
import { gearsOf } from '../kinds.js';
import type { TrainSpec } from '../types.js';
import { gearFeatureProblems } from './gearFeatures.js';
import { gripProblems, ringFeatureProblems } from './ringFeatures.js';
import { type Body, FLOOR_LAYERS, notWith, WALL_LINES } from './room.js';
import { madeRootRadius, rootsFollow } from './roots.js';
import { gears, lines, type Rule, toothSizes } from './rule.js';

/** Every feature of the gears of a pair, a rack or a single gear finds room in its part, and beside its mate. */
export const trainFeatureRoom: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [...toothSizes, 'faceWidth', 'fit.gap', ...gears, 'printer.layer', ...lines],
  find(spec) {
    if (!rootsFollow(spec)) return anywhere(spec);
    return trainFeatureProblems(spec, (_, gear) => madeRootRadius(spec, gear));
  },
};

/** Root radius of a gear as made, mm, by its key in the file. */
export type RootOf = (
  part: string,
  gear: { teeth: number; profileShift?: number; internal: boolean },
) => number;

/**
 * What finds no room. What stands on a gear with teeth outside stays inside its root circle, where no mate comes, and
 * what stands out from one with teeth inside is away from its mate.
 */
export function trainFeatureProblems(spec: TrainSpec, rootOf: RootOf): Problem[] {
  const beside = besideArm(spec);
  if (beside.length) return beside;
  const body = bodyOf(spec);
  return gearsOf(spec).flatMap((gear) => {
    const around = body(gear.part, rootOf(gear.part, gear));
    return gear.internal ? ringFeatureProblems(gear, gear.rim, around) : gearFeatureProblems(gear, around);
  });
}

/** What finds no room wherever root circles turn out to be. */
function anywhere(spec: TrainSpec): Problem[] {
  const beside = besideArm(spec);
  if (beside.length) return beside;
  const body = bodyOf(spec);
  return gearsOf(spec).flatMap((gear) =>
    gear.internal
      ? gripProblems(gear, gear.rim, body(gear.part, 0))
      : gearFeatureProblems(gear, body(gear.part, Number.POSITIVE_INFINITY)),
  );
}

function bodyOf({ printer, faceWidth }: TrainSpec) {
  return (part: string, root: number): Body => ({
    part,
    root,
    faceWidth,
    wall: WALL_LINES * printer.lineWidth,
    floor: FLOOR_LAYERS * printer.layer,
  });
}

/** The arm of a crank handle lies on its gear's top face and sweeps over the other gear's. */
function besideArm(spec: TrainSpec): Problem[] {
  const [pinion, wheel] = gearsOf(spec);
  if (!wheel || pinion.internal) return [];
  const found: Problem[] = [];
  const arm = (by: string, crank: { handle?: number } | undefined) => {
    if (crank?.handle === undefined) return null;
    return `the arm of ${by}.crank.handle, which sweeps over it,`;
  };
  const [own, others] = [arm('pinion', pinion.crank), wheel.internal ? null : arm('wheel', wheel.crank)];
  if (own && !wheel.internal) {
    if (wheel.crank?.handle !== undefined) found.push(...notWith('wheel.crank', wheel.crank, own));
    if (wheel.knob) found.push(...notWith('wheel.knob', wheel.knob, own));
  }
  if (others && pinion.knob) found.push(...notWith('pinion.knob', pinion.knob, others));
  for (const [part, text, above] of [
    ['wheel', wheel.text, own],
    ['pinion', pinion.text, others],
  ] as const)
    if (above && text?.style === 'raised')
      found.push(
        problemOf('excluded', `${part}.text.style`, text.style, `must be sunk where ${above} is given`, [
          'sunk',
        ]),
      );
  return found;
}

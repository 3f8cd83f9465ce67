import { type Problem, problemOf } from '../refusal.js';
import type { PairSpec, TrainSpec } from '../types.js';
import { gearFeatureProblems } from './gearFeatures.js';
import { madeRootRadius, rootsFollow } from './gears.js';
import { gripProblems, ringFeatureProblems } from './ringFeatures.js';
import { type Body, FLOOR_LAYERS, notWith, WALL_LINES } from './room.js';
import { type Rule, toothSizes } from './rule.js';
import { externalGears } from './trains.js';

/** Every feature of the gears of a pair, a rack or a single gear finds room in its part, and beside its mate. */
export const trainFeatureRoom: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [
    ...toothSizes,
    'faceWidth',
    'fit.gap',
    'pinion',
    'wheel',
    'gear',
    'printer.nozzle',
    'printer.layer',
    'printer.lineWidth',
  ],
  find(spec) {
    if (spec.kind === 'pair' && !rootsFollow(spec)) return anywhere(spec);
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
  const beside = spec.kind === 'pair' ? besideArm(spec) : [];
  if (beside.length) return beside;
  const body = bodyOf(spec);
  const ring = spec.kind === 'pair' ? spec.wheel : spec.kind === 'gear' ? spec.gear : undefined;
  const ringPart = spec.kind === 'pair' ? 'wheel' : 'gear';
  return [
    ...externalGears(spec).flatMap(([part, gear]) =>
      gearFeatureProblems(gear, body(part, rootOf(part, { ...gear, internal: false }))),
    ),
    ...(ring?.internal ? ringFeatureProblems(ring, ring.rim, body(ringPart, rootOf(ringPart, ring))) : []),
  ];
}

/** What finds no room in a pair wherever root circles turn out to be. */
function anywhere(spec: PairSpec): Problem[] {
  const beside = besideArm(spec);
  if (beside.length) return beside;
  const body = bodyOf(spec);
  const { wheel } = spec;
  return [
    ...externalGears(spec).flatMap(([part, gear]) =>
      gearFeatureProblems(gear, body(part, Number.POSITIVE_INFINITY)),
    ),
    ...(wheel.internal ? gripProblems(wheel, wheel.rim, body('wheel', 0)) : []),
  ];
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
function besideArm({ pinion, wheel }: PairSpec): Problem[] {
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

import { liftOf } from '../lib/fit/carrier/carrierSizes.js';
import { drawnTrain } from '../lib/fit/train/drawnTrain.js';
import { type FittedTrain, fitDrawn, fitTrain } from '../lib/fit/train/fitTrain.js';
import { type FittedSet, fittedSetOf, type SetNumbers, setOf } from '../lib/fit/train/setOf.js';
import { trainNumbers } from '../lib/fit/train/trainNumbers.js';
import type { PlanFindings, ToothFindings } from '../lib/proof/findings.js';
import { type RollingGap, rollTrain } from '../lib/proof/rolling/rollTrain.js';
import type { Wall } from '../lib/solid/blank.js';
import { sweepOf, wallOf } from '../lib/solid/buildTrain.js';
import type { Sweep } from '../lib/solid/sweep/helix.js';
import type { PlanetarySpec, Spec } from '../lib/spec/types.js';
import type { ToothProfile } from '../lib/tooth/profile.js';
import type { Link } from '../lib/train/speeds.js';

/** The meshes of a planetary set by its teeth. */
export const planetaryLinks = (sun: number, planet: number, ring: number): Link[] => [
  { between: ['sun', 'planet'], teeth: [sun, planet], internal: false, about: 'carrier' },
  { between: ['planet', 'ring'], teeth: [planet, ring], internal: true, about: 'carrier' },
];

/** What a file asks for, fitted. */
export const fitted = <S extends Spec>(spec: S): FittedTrain<S> => fitTrain(trainNumbers(spec));

/** A planetary set fitted, by the names of its gears. */
export const fitSet = (spec: PlanetarySpec): FittedSet => fittedSetOf(fitted(spec));

/** Its numbers. */
export const setNumbers = (spec: PlanetarySpec): SetNumbers => setOf(trainNumbers(spec));

/** What checks on numbers are asked with. */
export function planOf<S extends Spec>(spec: S): PlanFindings<S> {
  const numbers = trainNumbers(spec);
  return { spec, numbers, drawnNumbers: drawnTrain(numbers) };
}

/** What checks on outlines are asked with. */
export function teethOf<S extends Spec>(spec: S): ToothFindings<S> {
  const plan = planOf(spec);
  const asked = fitTrain(plan.numbers);
  const drawn = fitDrawn(asked);
  return { ...plan, asked, drawn, adjustments: [], rolling: rollTrain(drawn) };
}

/** Outlines as fitted, taken to roll at just the gap. */
export function outlinesOf<S extends Spec>(spec: S): ToothFindings<S> {
  const plan = planOf(spec);
  const asked = fitTrain(plan.numbers);
  const rolling = asked.meshes.map(({ between }): RollingGap => {
    return {
      of: between[1],
      least: spec.fit.gap,
      bySide: [0, 0],
      copy: 1,
      phase: 0,
      mates: between,
      curve: [],
    };
  });
  return { ...plan, asked, drawn: fitDrawn(asked), adjustments: [], rolling };
}

/** A kind of gear as it is swept. */
export interface SweptGear {
  first: string;
  profile: ToothProfile;
  sweep: Sweep;
  wall: Wall;
  tolerance: number;
  rotation: number;
  centre: [number, number];
  lift: number;
}

/** Every kind of gear of a fitted train, in its order. */
export function sweptGears(train: FittedTrain): SweptGear[] {
  const { tolerance } = train.spec;
  return train.gears.map((one) => {
    const [{ name, rotation, centre }] = one.places;
    const lift = liftOf(train.carrier);
    const { profile } = one;
    const [sweep, wall] = [sweepOf(train, one), wallOf(train, one, tolerance)];
    return { first: name, profile, sweep, wall, tolerance, rotation, centre, lift };
  });
}

import { type FittedTrain, fitTrain, type PlacedGear as Placed } from '../../fit/train/fitTrain.js';
import { gearIn } from '../../fit/train/train.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import { arrangementOf } from '../../proof/arrangements/arrangementOf.js';
import { sheetOf } from '../../proof/sheetOf.js';
import type { BarRecord } from '../../proof/sheetTypes.js';
import { buildTrain } from '../../solid/buildTrain.js';
import type { Part } from '../../solid/mesh.js';
import type { Spec } from '../../spec/types.js';
import { gearSizes, radians } from '../../tooth/gear.js';
import { polar } from '../../tooth/polar.js';
import { figure } from '../figure.js';
import type { Mates, PlacedGear, Subject } from './subject.js';

/**
 * What a file asks for, as it is to be shown, at the sizes that it is printed at: growth and shrinkage left out.
 * @param parts its parts at those sizes [built here]
 * @throws Refusal when the teeth cannot be made
 */
export function subjectOf(spec: Spec, parts?: readonly Part[]): Subject {
  const numbers = trainNumbers(spec);
  const fitted = fitTrain(numbers);
  const sheet = sheetOf({ spec, numbers, drawnNumbers: numbers, asked: fitted }, []);
  const places = sheet.train.planets.map(({ angle }) => angle);
  const ring = fitted.gears.find(({ gear }) => gear.internal);
  const beside = fitted.bar ? null : fitted.meshes[0];
  return {
    name: spec.name,
    train: fitted,
    title: arrangementOf(spec).title,
    parts: parts ?? buildTrain(fitted),
    gears: fitted.gears.flatMap(placedGears),
    records: sheet.gears,
    meshes: sheet.meshes,
    mates: matesOf(fitted),
    faceWidth: spec.faceWidth,
    ...(ring && { around: ring.part }),
    ...(beside && {
      centreDistance: { between: firstNames(fitted, beside.between), value: beside.centreDistance },
    }),
    ...('opening' in sheet.train && places.length > 1
      ? { opening: { ...widest(places, sheet.train.opening.arc), value: sheet.train.opening.arc } }
      : {}),
    facts: 'bar' in sheet && sheet.bar ? barFacts(sheet.bar) : [],
  };
}

function placedGears({ gear, profile, places }: Placed): PlacedGear[] {
  const radii = {
    reference: gearSizes(gear).referenceRadius,
    tip: profile.tipRadius,
    root: profile.rootRadius,
  };
  return places.map(({ name, centre }) => ({ part: name, centre, radii }));
}

function firstNames(train: FittedTrain, between: readonly string[]): [string, string] {
  const [one, two] = between.map((part) => (part === 'bar' ? part : gearIn(train, part).places[0].name));
  return [one, two];
}

/** Where the first two of each mesh roll on each other: between their axes, or below a pinion on the bar's pitch line. */
function matesOf(train: FittedTrain): Mates[] {
  return train.meshes.map(({ between, pair, centreDistance }) => {
    const one = gearIn(train, between[0]);
    const { baseHelixAngle, referenceRadius } = gearSizes(one.gear);
    const { gap } = train.spec.fit;
    return {
      between: firstNames(train, between),
      pitchPoint: pair
        ? pitchPoint(one, gearIn(train, between[1]), centreDistance)
        : ([0, -referenceRadius] as const),
      gap,
      gapAcross: gap / Math.cos(baseHelixAngle),
    };
  });
}

/** From the axis that stands on that of the train: of a ring or a sun in a set, of the pinion in a pair. */
function pitchPoint(one: Placed, two: Placed, centreDistance: number): readonly [number, number] {
  const [centred, other] = one.orbits ? [two, one] : [one, two];
  const ring = two.gear.internal;
  const sum = ring ? two.gear.teeth - one.gear.teeth : one.gear.teeth + two.gear.teeth;
  const radius = (centreDistance * centred.gear.teeth) / sum;
  return polar(radius, other.places[0].direction);
}

function barFacts({ teeth, transversePitch, length, datumHeight }: BarRecord): Subject['facts'] {
  return [
    ['Bar: teeth', String(teeth)],
    ['Bar: pitch along it', figure(transversePitch)],
    ['Bar: length', figure(length)],
    ['Bar: foot to datum line', figure(datumHeight)],
  ];
}

/** Where the widest opening lies; of equally wide ones the one that has most room. */
function widest(places: readonly number[], arc: number): { from: number; to: number } {
  const sorted = places.map((place) => ((place % 360) + 360) % 360).sort((a, b) => a - b);
  const between = sorted.map((from, i) => ({ from, to: sorted[i + 1] ?? sorted[0] + 360 }));
  const most = Math.max(...between.map(({ from, to }) => to - from));
  const off = ({ from, to }: { from: number; to: number }): number =>
    1 - Math.cos(radians((from + to) / 2 - BELOW));
  const { from, to } = between
    .filter((gap) => gap.to - gap.from > most - 1e-6)
    .reduce((best, gap) => (off(gap) < off(best) - 1e-9 ? gap : best));
  const middle = (from + to) / 2;
  return { from: middle - arc / 2, to: middle + arc / 2 };
}

/** Below, and a little to the left: clear of the letters at both sides. */
const BELOW = 255;

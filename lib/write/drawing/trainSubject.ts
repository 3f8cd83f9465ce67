import { fitTrain } from '../../fit/trains/fitTrain.js';
import type { Train } from '../../fit/trains/train.js';
import { trainNumbers } from '../../fit/trains/trainNumbers.js';
import { trainSheet } from '../../proof/trains/trainSheet.js';
import { buildFittedTrain } from '../../solid/buildTrain.js';
import type { Part } from '../../solid/mesh.js';
import type { TrainSpec } from '../../spec/types.js';
import { gearSizes } from '../../tooth/gear.js';
import { figure } from '../figure.js';
import type { Mates, Subject } from './subject.js';

const TITLES = { pair: 'Pair of gears', rack: 'Rack and pinion', gear: 'Gear' } as const;

/**
 * A pair, a rack and pinion, or one gear as it is to be drawn, at the sizes that it is printed at.
 * @param parts its parts at those sizes [built here]
 * @throws Refusal when the teeth cannot be made
 */
export function trainSubject(spec: TrainSpec, parts?: readonly Part[]): Subject {
  const numbers = trainNumbers(spec);
  const fitted = fitTrain(numbers);
  const sheet = trainSheet({ numbers, drawnNumbers: numbers, asked: fitted }, []);
  const ring = fitted.gears.find(({ gear }) => gear.internal);
  return {
    name: spec.name,
    title: TITLES[spec.kind],
    parts: parts ?? buildFittedTrain(fitted),
    gears: fitted.gears.map(({ part, centre, gear, profile }) => ({
      part,
      centre,
      radii: {
        reference: gearSizes(gear).referenceRadius,
        tip: profile.tipRadius,
        root: profile.rootRadius,
      },
    })),
    records: sheet.gears,
    meshes: sheet.meshes,
    mates: matesOf(numbers),
    faceWidth: spec.faceWidth,
    ...(ring && { around: ring.part }),
    ...(spec.kind === 'pair' && {
      centreDistance: { between: ['pinion', 'wheel'], value: numbers.mesh!.centreDistance },
    }),
    facts: sheet.bar
      ? [
          ['Bar: teeth', String(sheet.bar.teeth)],
          ['Bar: pitch along it', figure(sheet.bar.transversePitch)],
          ['Bar: length', figure(sheet.bar.length)],
          ['Bar: foot to datum line', figure(sheet.bar.datumHeight)],
        ]
      : [],
  };
}

/** Where pinion and mate roll on each other: between their axes, or straight below the pinion on the bar's pitch line. */
function matesOf({ spec, gears, bar, mesh }: Train): Mates[] {
  if (!mesh) return [];
  const [pinion, wheel] = gears;
  const { baseHelixAngle, referenceRadius } = gearSizes(pinion.gear);
  const sum =
    wheel &&
    (wheel.gear.internal ? wheel.gear.teeth - pinion.gear.teeth : wheel.gear.teeth + pinion.gear.teeth);
  const { gap } = spec.fit;
  return [
    {
      between: mesh.between,
      pitchPoint: bar ? [0, -referenceRadius] : [(mesh.centreDistance * pinion.gear.teeth) / sum, 0],
      gap,
      gapAcross: gap / Math.cos(baseHelixAngle),
    },
  ];
}

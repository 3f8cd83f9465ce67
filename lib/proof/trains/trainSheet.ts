import { sentences } from '../../fit/adjustment.js';
import { compensationOf } from '../../fit/compensation.js';
import type { Train } from '../../fit/trains/train.js';
import { barPitch } from '../../spec/bar.js';
import { gearSizes } from '../../tooth/gear.js';
import { version } from '../../version.js';
import { gapsBetween } from '../bodies.js';
import { cautions } from '../cautions.js';
import type { Check } from '../check.js';
import { overlapOf } from '../contact.js';
import { gearRecord } from '../gearRecords.js';
import { meshRecord } from '../meshRecords.js';
import { partRecords } from '../partRecords.js';
import { besideDrawn, gearFeatureSizes, ringFeatureSizes } from '../printing/featureSizes.js';
import { boreSize, gearSizesOf } from '../printing/printingRecord.js';
import type {
  BarRecord,
  GearRecord,
  MeshRecord,
  PrintedSize,
  PrintingRecord,
  SimpleTrainRecord,
  TrainSheet,
} from '../sheetTypes.js';
import type { TrainFindings } from './trainFindings.js';

/** The sheet of a pair, of a rack and pinion, or of one gear; what was not measured is null or empty. */
export function trainSheet(found: TrainFindings, checks: Check[]): TrainSheet {
  const { numbers, drawnNumbers, parts, bodies, play, smallParts } = found;
  const { spec } = numbers;
  const gears = gearRecordsOf(numbers);
  return {
    name: spec.name,
    resolved: spec,
    gears,
    ...(numbers.bar && { bar: barRecord(numbers, numbers.bar) }),
    meshes: meshesOf(found),
    train: trainOf(numbers),
    checks,
    parts: parts && bodies ? partRecords(parts, bodies) : [],
    play: play ?? null,
    printing: printingOf(numbers, drawnNumbers, gears),
    cautions: cautions({ smallParts }, { ...spec.filament, name: spec.filament.material }),
    adjustments: sentences(found.adjustments ?? numbers.adjustments),
    cogweave: version,
  };
}

function gearRecordsOf({ spec, gears }: Train): GearRecord[] {
  const spur = spec.helix.form === 'spur';
  return gears.map((one) => gearRecord(spec, { ...one, count: 1, hand: spur ? 'none' : one.hand }));
}

function barRecord({ spec }: Train, bar: NonNullable<Train['bar']>): BarRecord {
  const rootHeight = bar.backing;
  return {
    teeth: bar.teeth,
    module: bar.bar.module,
    transversePitch: barPitch(spec),
    length: bar.length,
    datumHeight: rootHeight - bar.root,
    rootHeight,
    tipHeight: rootHeight - bar.root + bar.tip,
    helixAngle: bar.bar.helixAngle,
    hand: spec.helix.form === 'spur' ? 'none' : bar.hand,
  };
}

function meshesOf({ numbers, asked, rolling, bodies, motion }: TrainFindings): MeshRecord[] {
  const { spec, gears, mesh } = asked ?? numbers;
  if (!mesh) return [];
  const [one, two] = mesh.between;
  return [
    meshRecord(spec, {
      between: mesh.between,
      pair: mesh,
      helixOf: gears[0].gear,
      contact: { transverse: mesh.transverseContactRatio, overlap: overlapOf(spec, gears[0].gear) },
      rolled: rolling ?? undefined,
      measured: bodies && gapsBetween(bodies, one, two),
      motion,
    }),
  ];
}

function trainOf({ gears: [pinion, wheel], bar }: Train): SimpleTrainRecord {
  const planets: [] = [];
  if (bar) {
    const { referenceRadius } = gearSizes(pinion.gear);
    return { ratios: { travelPerTurn: 2 * Math.PI * referenceRadius }, planets };
  }
  if (!wheel) return { ratios: {}, planets };
  const way = wheel.gear.internal ? 1 : -1;
  const ratio = (way * wheel.gear.teeth) / pinion.gear.teeth;
  return { ratios: { pinionDriving: ratio, wheelDriving: 1 / ratio }, planets };
}

function printingOf(asked: Train, drawn: Train, records: readonly GearRecord[]): PrintingRecord {
  return {
    ...compensationOf(asked.spec),
    sizes: [
      ...records.flatMap((record, i) => gearSizesOf(record, drawn.gears[i])),
      ...asked.gears.flatMap((one, i) => wallSizes(one, drawn.gears[i])),
      ...(asked.bar && drawn.bar ? barSizes(asked.bar, drawn.bar) : []),
    ],
  };
}

function wallSizes(asked: Train['gears'][number], drawn: Train['gears'][number]): PrintedSize[] {
  const { part } = asked;
  if (asked.gear.internal) {
    const outer = ({ radii, rim }: typeof asked) => 2 * (radii.root + rim);
    return [
      { part, feature: 'outer diameter', drawn: outer(drawn), expected: outer(asked) },
      ...besideDrawn(ringFeatureSizes(part, asked.features), ringFeatureSizes(part, drawn.features)),
    ];
  }
  const [expected, made] = [boreSize(asked.bore), boreSize(drawn.bore)];
  return [
    ...(expected === null || made === null
      ? []
      : [{ part, feature: 'bore' as const, drawn: made, expected }]),
    ...besideDrawn(gearFeatureSizes(part, asked.features), gearFeatureSizes(part, drawn.features)),
  ];
}

function barSizes(asked: NonNullable<Train['bar']>, drawn: NonNullable<Train['bar']>): PrintedSize[] {
  const height = ({ backing, root, tip }: typeof asked) => backing - root + tip;
  return [
    { part: 'bar', feature: 'length', drawn: drawn.length, expected: asked.length },
    { part: 'bar', feature: 'height', drawn: height(drawn), expected: height(asked) },
  ];
}

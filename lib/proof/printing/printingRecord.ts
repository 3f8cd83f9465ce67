import { mainSize } from '../../features/bore.js';
import { readings } from '../../features/through.js';
import { compensationOf } from '../../fit/compensation.js';
import type { Train, TrainBar, TrainGear } from '../../fit/train/train.js';
import { unlessRefused } from '../../refusal.js';
import { baseTangentLength } from '../../tooth/baseTangent.js';
import type { Gear } from '../../tooth/gear.js';
import { overPins } from '../../tooth/overPins.js';
import type { GearRecord, PrintedSize, PrintingRecord } from '../sheetTypes.js';

/**
 * What is compensated, and every size that calipers can read, as drawn and as expected on the print. The expected
 * sizes are those that the file asks for, gap taken off.
 * @param records of the gears as asked
 */
export function printingRecord(asked: Train, drawn: Train, records: readonly GearRecord[]): PrintingRecord {
  return {
    ...compensationOf(asked.spec),
    sizes: [
      ...records.flatMap((record, i) => gearSizesOf(record, drawn.gears[i])),
      ...asked.gears.flatMap((one, i) => wallSize(one, drawn.gears[i])),
      ...asked.gears.flatMap((one, i) => featureSizes(one, drawn.gears[i])),
      ...(asked.bar && drawn.bar ? barSizes(asked.bar, drawn.bar) : []),
    ],
  };
}

/** The sizes of a gear, as drawn and as recorded; one that cannot be measured on it is left out. */
function gearSizesOf(record: GearRecord, { gear, radii, relief }: TrainGear): PrintedSize[] {
  const { part, tipDiameter, rootDiameter, baseTangentLength: span, overPins: pins } = record;
  const sizes: PrintedSize[] = [
    { part, feature: 'tip diameter', drawn: 2 * radii.tip, expected: tipDiameter },
    { part, feature: 'root diameter', drawn: 2 * radii.root, expected: rootDiameter },
  ];
  if (span.teethSpanned !== null && span.withGap !== null)
    sizes.push({
      part,
      feature: 'base tangent length',
      drawn: baseTangentLength(gear, span.teethSpanned, relief),
      expected: span.withGap,
    });
  const overSamePin = pins.pin === null ? null : pinReading(gear, pins.pin, relief);
  if (overSamePin !== null && pins.withGap !== null)
    sizes.push({ part, feature: 'over pins', drawn: overSamePin, expected: pins.withGap });
  return sizes;
}

/** Null where the pin that suits the print sinks too deep between the drawn flanks. */
function pinReading(gear: Gear, pin: number, relief: number): number | null {
  return unlessRefused(() => overPins(gear, pin, relief), null);
}

/** A ring's outer wall, or a bore. */
function wallSize(asked: TrainGear, drawn: TrainGear): PrintedSize[] {
  const { part } = asked;
  if (asked.gear.internal)
    return [{ part, feature: 'outer diameter', drawn: outerDiameter(drawn), expected: outerDiameter(asked) }];
  const [expected, made] = [mainSize(asked.bore), mainSize(drawn.bore)];
  return expected && made ? [{ part, feature: 'bore', drawn: made.value, expected: expected.value }] : [];
}

/** Of a gear with teeth inside, mm. */
export function outerDiameter({ radii, rim }: TrainGear): number {
  return 2 * (radii.root + rim);
}

function barSizes(asked: TrainBar, drawn: TrainBar): PrintedSize[] {
  const height = ({ backing, root, tip }: TrainBar) => backing - root + tip;
  return [
    { part: 'bar', feature: 'length', drawn: drawn.length, expected: asked.length },
    { part: 'bar', feature: 'height', drawn: height(drawn), expected: height(asked) },
  ];
}

/** Widths on a gear's features, its crank handle and clamp ring among them. */
function featureSizes(asked: TrainGear, drawn: TrainGear): PrintedSize[] {
  const read = (one: TrainGear) => readings(one.features, outerDiameter(one));
  const made = read(drawn);
  return read(asked).map(({ part = asked.part, feature, size }, i) => ({
    part,
    feature,
    drawn: made[i].size,
    expected: size,
  }));
}

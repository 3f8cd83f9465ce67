import { compensationOf, drawnNumbers, type SizedSet } from '../../fit/compensation.js';
import type { MadeRadii } from '../../fit/madeRadii.js';
import { reliefs } from '../../fit/reliefs.js';
import { Refusal } from '../../spec/refusal.js';
import type { Bore } from '../../spec/types.js';
import { baseTangentLength } from '../../tooth/baseTangent.js';
import type { Gear } from '../../tooth/gear.js';
import { overPins } from '../../tooth/overPins.js';
import type { GearRecord, PrintedSize, PrintingRecord } from '../sheetTypes.js';
import { besideDrawn, featureSizes } from './featureSizes.js';

/**
 * What is compensated, and every size that calipers can read, as drawn and as expected on the print. The expected
 * sizes are those that the file asks for, gap taken off.
 * @param records of the gears as asked
 */
export function printingRecord(asked: SizedSet, records: readonly GearRecord[]): PrintingRecord {
  const drawn = drawnNumbers(asked);
  return {
    ...compensationOf(asked.spec),
    sizes: records.flatMap((record) => setSizes(record, drawn)).concat(wallSizes(asked, drawn)),
  };
}

function setSizes(record: GearRecord, drawn: SizedSet): PrintedSize[] {
  const part = record.part as 'sun' | 'planet' | 'ring';
  const relief = reliefs(drawn.spec.fit)[part];
  return gearSizesOf(record, { gear: drawn.gears[part], radii: drawn.radii[part], relief });
}

/** The sizes of a gear, as drawn and as recorded; one that cannot be measured on it is left out. */
export function gearSizesOf(
  record: GearRecord,
  { gear, radii, relief }: { gear: Gear; radii: MadeRadii; relief: number },
): PrintedSize[] {
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
  try {
    return overPins(gear, pin, relief);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

function wallSizes(asked: SizedSet, drawn: SizedSet): PrintedSize[] {
  const outer = ({ spec, radii }: SizedSet) => 2 * (radii.ring.root + spec.ring.rim);
  const bore = boreSize(asked.spec.sun.bore);
  const features = besideDrawn(
    featureSizes(asked.spec, outer(asked)),
    featureSizes(drawn.spec, outer(drawn)),
  );
  return [
    ...(bore === null
      ? []
      : [
          {
            part: 'sun' as const,
            feature: 'bore' as const,
            drawn: boreSize(drawn.spec.sun.bore)!,
            expected: bore,
          },
        ]),
    { part: 'ring', feature: 'outer diameter', drawn: outer(drawn), expected: outer(asked) },
    ...features,
  ];
}

/** Diameter, or width across flats, mm; null for none. */
export function boreSize(bore: Bore): number | null {
  switch (bore.shape) {
    case 'none':
      return null;
    case 'round':
    case 'D':
      return bore.diameter;
    case 'hexagon':
    case 'square':
      return bore.acrossFlats;
  }
}

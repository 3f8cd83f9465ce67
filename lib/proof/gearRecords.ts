import type { Train, TrainGear } from '../fit/train/train.js';
import { unlessRefused } from '../refusal.js';
import type { CommonSpec } from '../spec/types.js';
import { baseTangentFaceWidth, baseTangentLength, teethSpanned } from '../tooth/baseTangent.js';
import { type Gear, gearSizes } from '../tooth/gear.js';
import { overPins, practicalPin } from '../tooth/overPins.js';
import type { GearRecord } from './sheetTypes.js';

/** The sheet's record of each kind of gear, with what calipers read on it before and after the gap is taken off. */
export function gearRecords({ spec, gears }: Train): GearRecord[] {
  return gears.map((one) => gearRecord(spec, one));
}

function gearRecord(spec: CommonSpec, { part, gear, count, radii, relief, hand }: TrainGear): GearRecord {
  const sizes = gearSizes(gear);
  return {
    part,
    teeth: gear.teeth,
    count,
    module: gear.module,
    profileShift: gear.profileShift,
    pitchDiameter: 2 * sizes.referenceRadius,
    baseDiameter: 2 * sizes.baseRadius,
    tipDiameter: 2 * radii.tip,
    rootDiameter: 2 * radii.root,
    helixAngle: gear.helixAngle,
    hand: spec.helix.form === 'spur' ? 'none' : hand,
    baseTangentLength: baseTangent(spec, gear, relief),
    overPins: pins(gear, relief),
  };
}

/** Nulls for an internal helical gear, which flat anvils cannot measure. */
function baseTangent(spec: CommonSpec, gear: Gear, relief: number): GearRecord['baseTangentLength'] {
  if (gear.internal && gear.helixAngle > 0)
    return { teethSpanned: null, nominal: null, withGap: null, measurable: false };
  const span = teethSpanned(gear);
  const oneWay = spec.helix.form === 'herringbone' ? spec.faceWidth / 2 : spec.faceWidth;
  return {
    teethSpanned: span,
    nominal: baseTangentLength(gear, span),
    withGap: baseTangentLength(gear, span, relief),
    measurable: oneWay > baseTangentFaceWidth(gear, span),
  };
}

/** Nulls where no pin in whole tenths of a millimetre rests on both flanks. */
function pins(gear: Gear, relief: number): GearRecord['overPins'] {
  return unlessRefused(
    () => {
      const pin = practicalPin(gear);
      return { pin, nominal: overPins(gear, pin), withGap: overPins(gear, pin, relief) };
    },
    { pin: null, nominal: null, withGap: null },
  );
}

import type { MadeRadii } from '../fit/madeRadii.js';
import { reliefs } from '../fit/reliefs.js';
import type { SetRadii } from '../fit/setRadii.js';
import { Refusal } from '../spec/refusal.js';
import type { CommonSpec, PlanetarySpec } from '../spec/types.js';
import { baseTangentFaceWidth, baseTangentLength, teethSpanned } from '../tooth/baseTangent.js';
import { type Gear, gearSizes } from '../tooth/gear.js';
import { overPins, practicalPin } from '../tooth/overPins.js';
import type { SetGears } from '../train/setGears.js';
import type { GearRecord } from './sheetTypes.js';

/** The sheet's record of each kind of gear, with what calipers read on it before and after the gap is taken off. */
export function gearRecords(spec: PlanetarySpec, gears: SetGears, radii: SetRadii): GearRecord[] {
  const relief = reliefs(spec.fit);
  const hands = handsOf(spec);
  return (['sun', 'planet', 'ring'] as const).map((part) =>
    gearRecord(spec, {
      part,
      gear: gears[part],
      count: part === 'planet' ? spec.planets.count : 1,
      radii: radii[part],
      relief: relief[part],
      hand: hands[part],
    }),
  );
}

/** The sheet's record of one kind of gear. */
export function gearRecord(
  spec: CommonSpec,
  {
    part,
    gear,
    count,
    radii,
    relief,
    hand,
  }: Pick<GearRecord, 'part' | 'count' | 'hand'> & { gear: Gear; radii: MadeRadii; relief: number },
): GearRecord {
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
    hand,
    baseTangentLength: baseTangent(spec, gear, relief),
    overPins: pins(gear, relief),
  };
}

/** Sun one hand, planets and ring the other. */
function handsOf({ helix }: PlanetarySpec): Record<'sun' | 'planet' | 'ring', GearRecord['hand']> {
  if (helix.form === 'spur') return { sun: 'none', planet: 'none', ring: 'none' };
  const other = helix.hand === 'right' ? 'left' : 'right';
  return { sun: helix.hand, planet: other, ring: other };
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
  try {
    const pin = practicalPin(gear);
    return { pin, nominal: overPins(gear, pin), withGap: overPins(gear, pin, relief) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { pin: null, nominal: null, withGap: null };
  }
}

import { refuse } from '../refusal.js';
import { generatedFormRadius } from './externalProfile.js';
import { type Gear, gearSizes } from './gear.js';
import { inverseInvolute, involute } from './involute.js';

/** Diameters in which drill shanks and gauge pins are at hand, mm. Common practice, no source. */
const PIN_STEP = 0.1;
/** Practical pins are looked for up to this part away from the ideal one. */
const PIN_RANGE = 0.5;

/**
 * Diameter of the pin (ball, for a helical gear) that touches both flanks on the circle d + 2 x m.
 * @returns mm, not rounded
 * Source: Elements of Metric Gear Technology 10.3, ideal pin diameters, in the equivalent spur gear of z / cos³ β
 * teeth when helical (from memory, reproduces its worked examples; the sign-changed form for rings).
 */
export function idealPin(gear: Gear): number {
  const { normalPressureAngle: alpha, helixAngle } = gearSizes(gear);
  const teeth = gear.teeth / Math.cos(helixAngle) ** 3;
  const shift = gear.profileShift;
  const side = gear.internal ? -1 : 1;
  const halfSpace = (side * Math.PI) / (2 * teeth) - involute(alpha) - (2 * shift * Math.tan(alpha)) / teeth;
  const contact = Math.acos(Math.min(1, (teeth * Math.cos(alpha)) / (teeth + 2 * shift)));
  const centre = Math.tan(contact) + halfSpace;
  return side * teeth * gear.module * Math.cos(alpha) * (involute(centre) + halfSpace);
}

/** The part of a flank that a pin may touch, and the circle it must stand clear of to be measured, mm. */
export interface PinLimits {
  /** Where the involute ends near the root; for a ring the default allows the working depth of the rack. */
  formRadius: number;
  tipRadius: number;
}

/**
 * The pin to measure with: the whole tenth of a millimetre nearest to the ideal pin that touches both flanks
 * between form and tip circle and stands out beyond the tips.
 * @param limits sizes as made [the rack's]
 * @param relief normal distance in mm that each flank is cut back [0]
 * @returns mm
 * @throws Refusal when no such tenth of a millimetre does, for very small teeth
 */
export function practicalPin(gear: Gear, limits: PinLimits = rackLimits(gear), relief = 0): number {
  const ideal = idealPin(gear);
  const nearest = Math.round(ideal / PIN_STEP);
  const most = Math.ceil((ideal * PIN_RANGE) / PIN_STEP);
  // Pins that fit lie side by side between a least and a largest one: where the nearest does not fit, those on one side
  // of it alone can.
  for (let away = 0; away <= most; away++) {
    for (const step of [away, -away]) {
      // Written as a quotient: 17 × 0.1 is not 1.7.
      const pin = (nearest + step) / Math.round(1 / PIN_STEP);
      if (pin > 0 && pinFits(gear, pin, limits, relief)) return pin;
    }
  }
  const rule = `no pin in steps of ${PIN_STEP} mm touches the flanks of this gear`;
  refuse('not-measurable', 'module', gear.module, rule);
}

/**
 * Size M over two pins (external) or between two pins (ring); over or between balls when the gear is helical.
 * With an odd number of teeth the second pin sits half a pitch off the diameter. With cylindrical pins an odd
 * helical gear measures differently: there the figure holds for balls in one transverse plane.
 * @param pin diameter, mm
 * @param relief normal distance in mm that each flank is cut back into its tooth [0]
 * @returns mm
 * @throws Refusal when the pin cannot rest on both flanks: too thin for an external gear, too thick for a ring
 * Source: Elements of Metric Gear Technology 10.3 (from memory, reproduces its worked examples); ISO 21771.
 * A relief lets a pin sink as if it were thinner by twice the relief, and only there.
 */
export function overPins(gear: Gear, pin: number, relief = 0): number {
  const { baseRadius } = gearSizes(gear);
  const value = centreInvolute(gear, pin, relief);
  const rule = `a pin must be ${gear.internal ? 'thinner' : 'thicker'} to rest on both flanks`;
  if (!(value > 0)) refuse('not-measurable', 'pin', pin, rule, [Math.round(idealPin(gear) * 10) / 10]);
  const centreRadius = baseRadius / Math.cos(inverseInvolute(value));
  const across = gear.teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * gear.teeth));
  return 2 * centreRadius * across + (gear.internal ? -pin : pin);
}

/**
 * Radius at which a pin or ball touches the flanks, transverse section, mm.
 * The common normal is a ruling tangent of the base cylinder, inclined by β_b, so the pin's radius shortens the
 * tangent from its centre by (pin/2) cos β_b (lengthens it, in a ring).
 * @throws Refusal as `overPins`
 */
export function pinContactRadius(gear: Gear, pin: number, relief = 0): number {
  const { baseRadius, baseHelixAngle } = gearSizes(gear);
  const value = centreInvolute(gear, pin, relief);
  if (!(value > 0)) refuse('not-measurable', 'pin', pin, 'the pin does not rest on both flanks');
  const tangent = baseRadius * Math.tan(inverseInvolute(value));
  const normal = (pin / 2) * Math.cos(baseHelixAngle);
  return Math.hypot(baseRadius, gear.internal ? tangent + normal : tangent - normal);
}

/** inv φ of the circle on which the pin's centre lies. */
function centreInvolute(gear: Gear, pin: number, relief: number): number {
  const { normalPressureAngle, transversePressureAngle, halfThicknessAngle } = gearSizes(gear);
  const sunk = (pin - 2 * relief) / (gear.teeth * gear.module * Math.cos(normalPressureAngle));
  const foot = halfThicknessAngle + involute(transversePressureAngle);
  return gear.internal ? foot - sunk : sunk + foot - Math.PI / gear.teeth;
}

function pinFits(gear: Gear, pin: number, limits: PinLimits, relief: number): boolean {
  const { baseRadius } = gearSizes(gear);
  const value = centreInvolute(gear, pin, relief);
  if (!(value > 0)) return false;
  const centre = baseRadius / Math.cos(inverseInvolute(value));
  const contact = pinContactRadius(gear, pin, relief);
  if (gear.internal)
    return contact <= limits.formRadius && contact >= limits.tipRadius && centre - pin / 2 < limits.tipRadius;
  const tangent = baseRadius * Math.tan(inverseInvolute(value));
  // A normal longer than the tangent would put the contact on the far side of the base circle.
  const onFlank = tangent > (pin / 2) * Math.cos(gearSizes(gear).baseHelixAngle);
  return (
    onFlank &&
    contact >= limits.formRadius &&
    contact <= limits.tipRadius &&
    centre + pin / 2 > limits.tipRadius
  );
}

function rackLimits(gear: Gear): PinLimits {
  const { tipRadius, rootRadius, baseRadius } = gearSizes(gear);
  if (!gear.internal) return { tipRadius, formRadius: generatedFormRadius(gear, 0, rootRadius) };
  const clearance = (gear.rack.dedendum - gear.rack.addendum) * gear.module;
  return { tipRadius: Math.max(tipRadius, baseRadius), formRadius: rootRadius - clearance };
}

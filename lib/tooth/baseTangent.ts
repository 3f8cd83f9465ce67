import { refuse } from '../refusal.js';
import { type Gear, gearSizes } from './gear.js';
import { involute } from './involute.js';

/** Guards the halves of the handbook rule (18 teeth at 20°: exactly 2.5) against rounding of doubles. */
const TIE = 1e-9;

/**
 * How many teeth (tooth spaces, for a spur ring) to span so that the anvils touch near the circle d + 2 x m.
 * @returns a whole number, at least 2
 * @throws Refusal for an internal helical gear, which flat anvils cannot measure
 * Source: handbook rule k = z K(x/z, β) + 0.5, rounded (Elements of Metric Gear Technology 10.2; from memory,
 * reproduces its worked examples). Halves round up, as the handbook's table does at 9, 18, 27 … teeth.
 */
export function teethSpanned(gear: Gear): number {
  refuseInternalHelical(gear);
  const { normalPressureAngle, helixAngle, transversePressureAngle } = gearSizes(gear);
  const shift = gear.profileShift / gear.teeth;
  const tangent = Math.tan(normalPressureAngle);
  const flat = Math.cos(helixAngle) ** 2 + tangent ** 2;
  const contact = flat * (1 / Math.cos(helixAngle) + 2 * shift) ** 2 - 1;
  const span =
    (1 + Math.sin(helixAngle) ** 2 / flat) * Math.sqrt(Math.max(0, contact)) -
    involute(transversePressureAngle) -
    2 * shift * tangent;
  return Math.max(2, Math.round((gear.teeth * span) / Math.PI + 0.5 + TIE));
}

/**
 * Base tangent length W_k over `teethSpanned` teeth; for a spur ring, across as many tooth spaces.
 * @param teethSpanned whole number, at least 1
 * @param relief normal distance in mm that each flank is cut back into its tooth [0]: twice that is taken off
 *   the length over teeth, and added to the length across spaces
 * @returns mm
 * @throws Refusal for an internal helical gear, which flat anvils cannot measure
 * Source: ISO 21771, W_k = m_n cos α_n [π (k − 0.5) + z inv α_t] + 2 x m_n sin α_n.
 */
export function baseTangentLength(gear: Gear, teethSpanned: number, relief = 0): number {
  refuseInternalHelical(gear);
  const { normalPressureAngle, transversePressureAngle } = gearSizes(gear);
  const pitches = Math.PI * (teethSpanned - 0.5) + gear.teeth * involute(transversePressureAngle);
  const nominal =
    gear.module *
    (Math.cos(normalPressureAngle) * pitches + 2 * gear.profileShift * Math.sin(normalPressureAngle));
  return gear.internal ? nominal + 2 * relief : nominal - 2 * relief;
}

/**
 * The face width that a base tangent over `teethSpanned` teeth of a helical gear reaches across.
 * A gear narrower than this cannot be measured that way; handbooks ask for a little more than it.
 * @returns mm; 0 for a spur gear
 * Source: W_k sin β_b (Elements of Metric Gear Technology 10.2, DIN 3960; from memory).
 */
export function baseTangentFaceWidth(gear: Gear, teethSpanned: number): number {
  return baseTangentLength(gear, teethSpanned) * Math.sin(gearSizes(gear).baseHelixAngle);
}

/**
 * Radius at which the anvils touch the flanks, in the transverse section; it must lie on the involute.
 * @returns mm
 * Source: the transverse projection W_k cos β_b is a chord that is tangent to the base circle at its middle.
 */
export function baseTangentContactRadius(gear: Gear, teethSpanned: number): number {
  const { baseHelixAngle, baseRadius } = gearSizes(gear);
  const half = (baseTangentLength(gear, teethSpanned) * Math.cos(baseHelixAngle)) / 2;
  return Math.hypot(baseRadius, half);
}

function refuseInternalHelical(gear: Gear): void {
  const rule = 'flat anvils cannot span an internal helical gear';
  if (gear.internal && gear.helixAngle !== 0)
    refuse('not-measurable', 'helix.angle', gear.helixAngle, rule, [0]);
}

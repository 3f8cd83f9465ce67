import { refuse } from '../refusal.js';
import { type Gear, gearSizes } from '../tooth/gear.js';
import { inverseInvolute, involute } from '../tooth/involute.js';

/**
 * What two gears in mesh share and how far each one reaches; index 2 is the ring when one of them is internal.
 * Lengths in mm, angles in radians, all in the transverse plane.
 */
export interface PairSizes {
  internal: boolean;
  teeth1: number;
  teeth2: number;
  baseRadius1: number;
  baseRadius2: number;
  tipRadius1: number;
  tipRadius2: number;
  /** Where the true involute begins, when the root is undercut or the fillet limits it; the base circle if not given. */
  formRadius1?: number;
  formRadius2?: number;
  centreDistance: number;
  /** Working transverse pressure angle α_wt. */
  workingPressureAngle: number;
  /** Transverse base pitch p_bt = π m_t cos α_t. */
  basePitch: number;
}

/**
 * Working transverse pressure angle α_wt of two gears meshing without backlash.
 * @param first,second two external gears, or an external gear and a ring in either order
 * @returns radians
 * @throws Refusal when the racks differ, both are rings, the ring has too few teeth, or the profile shifts
 *   leave no angle
 * Source: ISO 21771, inv α_wt = inv α_t + 2 tan α_n (x1 ± x2)/(z1 ± z2).
 */
export function workingPressureAngle(first: Gear, second: Gear): number {
  const { shifts, teeth, sizes } = together(first, second);
  const start = involute(sizes.transversePressureAngle);
  const perShift = (2 * Math.tan(sizes.normalPressureAngle)) / teeth;
  const value = start + perShift * shifts;
  if (!(value > 0)) {
    const least = Math.floor((-start / perShift) * 100 + 1) / 100;
    const rule = 'the profile shifts bring the base circles past each other';
    refuse('no-line-of-action', 'profileShift', shifts, rule, [least]);
  }
  return inverseInvolute(value);
}

/**
 * Centre distance of two gears meshing without backlash.
 * @returns mm
 * @throws Refusal as `workingPressureAngle`
 * Source: ISO 21771, a = m_t (z2 ± z1)/2 · cos α_t / cos α_wt.
 */
export function centreDistance(first: Gear, second: Gear): number {
  return baseDistance(first, second) / Math.cos(workingPressureAngle(first, second));
}

/**
 * The profile shifts that a centre distance asks for: x1 + x2 of an external pair, x_ring − x_planet of an
 * internal one. The shifts that the gears already carry do not matter.
 * @param centreDistance mm
 * @throws Refusal when the base circles do not leave room for it
 * Source: ISO 21771, the inverse of the formulas above.
 */
export function shiftSum(first: Gear, second: Gear, centreDistance: number): number {
  const { teeth, sizes } = together(first, second);
  const least = baseDistance(first, second);
  const rule = `must exceed ${least} mm, where the line of action vanishes`;
  if (!(centreDistance > least))
    refuse('no-line-of-action', 'centreDistance', centreDistance, rule, [Math.ceil(least * 100 + 1) / 100]);
  const angle = Math.acos(least / centreDistance);
  const change = involute(angle) - involute(sizes.transversePressureAngle);
  return (teeth * change) / (2 * Math.tan(sizes.normalPressureAngle));
}

/**
 * All that the checks of one mesh need. The ring, if there is one, becomes gear 2.
 * @param made sizes as made that replace the nominal ones, for example tip radii after shortening and form radii
 * @throws Refusal as `workingPressureAngle`
 */
export function pairSizes(
  first: Gear,
  second: Gear,
  made: Partial<Pick<PairSizes, 'tipRadius1' | 'tipRadius2' | 'formRadius1' | 'formRadius2'>> = {},
): PairSizes {
  const [one, two] = first.internal ? [second, first] : [first, second];
  const sizes1 = gearSizes(one);
  const sizes2 = gearSizes(two);
  return {
    internal: two.internal,
    teeth1: one.teeth,
    teeth2: two.teeth,
    baseRadius1: sizes1.baseRadius,
    baseRadius2: sizes2.baseRadius,
    tipRadius1: sizes1.tipRadius,
    tipRadius2: sizes2.tipRadius,
    centreDistance: centreDistance(one, two),
    workingPressureAngle: workingPressureAngle(one, two),
    basePitch: (2 * Math.PI * sizes1.baseRadius) / one.teeth,
    ...made,
  };
}

/** The distance at which the line of action has no length: r_b1 + r_b2, or r_b2 − r_b1 with a ring. */
function baseDistance(first: Gear, second: Gear): number {
  const { teeth, sizes } = together(first, second);
  return (teeth * sizes.transverseModule * Math.cos(sizes.transversePressureAngle)) / 2;
}

/** Sums for an external pair, differences (ring less planet) for an internal one. */
function together(first: Gear, second: Gear) {
  for (const key of ['module', 'pressureAngle', 'helixAngle'] as const)
    if (first[key] !== second[key])
      refuse('differs', key, second[key], `two gears in mesh share it (the other has ${first[key]})`, [
        first[key],
      ]);
  if (first.internal && second.internal)
    refuse('no-mesh', 'internal', true, 'two rings cannot mesh', [false]);
  const sizes = gearSizes(first);
  if (!first.internal && !second.internal)
    return {
      teeth: first.teeth + second.teeth,
      shifts: first.profileShift + second.profileShift,
      sizes,
    };
  const [planet, ring] = first.internal ? [second, first] : [first, second];
  if (!(ring.teeth > planet.teeth))
    refuse('no-mesh', 'ring.teeth', ring.teeth, `must exceed the ${planet.teeth} teeth of its mate`, [
      planet.teeth + 1,
    ]);
  return {
    teeth: ring.teeth - planet.teeth,
    shifts: ring.profileShift - planet.profileShift,
    sizes,
  };
}

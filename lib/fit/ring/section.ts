import { refuse } from '../../refusal.js';

/** What a ring is made of and how thick it is. Lengths in mm, moduli in MPa. */
export interface RingSize {
  /** Radius of the middle of the wall, mm. */
  meanRadius: number;
  /** Radial thickness of the wall, mm; less than twice the mean radius. */
  depth: number;
  /** Axial width of the wall, mm. */
  width: number;
  /** Young's modulus, MPa. */
  modulus: number;
  /** Poisson's ratio, 0 … 0.5 [0.36: common practice for solid plastics, no source]. */
  poisson?: number;
}

/** A ring with a rectangular wall, ready for the formulas of ring bending. Lengths in mm, forces in N. */
export interface RingSection {
  meanRadius: number;
  depth: number;
  width: number;
  /** Area of the wall, mm². */
  area: number;
  /** How far the neutral fibre lies inside the middle of the wall, mm. */
  eccentricity: number;
  /** Movement, mm, is a coefficient times the force, N, times this: R³/(E I) with I = A e R. */
  compliance: number;
  /** Roark's k1 = 1 − α + β: hoop force and shear beside bending. */
  k1: number;
  /** Roark's k2 = 1 − α. */
  k2: number;
}

/** Shear deformation factor of a rectangular section. Source: Roark, 6/5 (from memory). */
const SHEAR_FACTOR = 1.2;

/**
 * Stiffness of a ring with a rectangular wall, thick walls included.
 * @throws Refusal when a size is not a positive number or the wall reaches the axis
 * Source: Roark's formulas for stress and strain, circular rings: α = e/R and β = 2 F (1 + ν) e/R for thick rings,
 * with I = A e R and the exact e of a rectangle, R − h / ln(outer/inner) (from memory; the tests hold the result
 * against integrated strain energy and against Michell's exact plane solution).
 */
export function ringSection({ meanRadius, depth, width, modulus, poisson = 0.36 }: RingSize): RingSection {
  for (const [key, value] of Object.entries({ meanRadius, depth, width, modulus }))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      refuse('out-of-range', key, value, 'must be a positive number');
  if (!(poisson >= 0 && poisson <= 0.5))
    refuse('out-of-range', 'poisson', poisson, 'must be 0 to 0.5', [0.36]);
  if (!(depth < 2 * meanRadius))
    refuse('beyond-limit', 'depth', depth, `must be less than twice the mean radius ${meanRadius} mm`);
  const area = depth * width;
  const eccentricity = meanRadius * neutralShift(depth / (2 * meanRadius));
  const hoop = eccentricity / meanRadius;
  const shear = 2 * SHEAR_FACTOR * (1 + poisson) * hoop;
  return {
    meanRadius,
    depth,
    width,
    area,
    eccentricity,
    compliance: meanRadius ** 2 / (modulus * area * eccentricity),
    k1: 1 - hoop + shear,
    k2: 1 - hoop,
  };
}

/**
 * e/R of a rectangular wall, 1 − s / artanh s, for s = half the depth over the mean radius, 0 … 1. A thin wall's e
 * would drown in rounding as a difference, so artanh s − s is summed as a series there.
 */
function neutralShift(s: number): number {
  if (s > 0.3) return 1 - s / Math.atanh(s);
  let sum = 0;
  for (let n = 3, power = s ** 3; n < 40; n += 2, power *= s * s) sum += power / n;
  return sum / Math.atanh(s);
}

import type { RingSection } from './section.js';

/**
 * Largest stress in the wall where a moment and a hoop force act, MPa, without sign.
 * @param moment N mm, positive where it pulls on the inside
 * @param hoopForce N, positive where it pulls
 * Source: curved beam of Winkler and Bach, σ = N/A + M (r_n − r)/(A e r) (from memory; tested against Lamé's ring).
 */
export function wallStress(
  { meanRadius, depth, area, eccentricity }: RingSection,
  moment: number,
  hoopForce: number,
): number {
  const neutral = meanRadius - eccentricity;
  const at = (radius: number) =>
    hoopForce / area + (moment * (neutral - radius)) / (area * eccentricity * radius);
  return Math.max(Math.abs(at(meanRadius - depth / 2)), Math.abs(at(meanRadius + depth / 2)));
}

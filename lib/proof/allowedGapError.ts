import type { Spec } from '../spec/types.js';

/** How far a measured gap may be from the one asked for: 3 % of it, or the mesh tolerance where that is more. mm. */
export function allowedGapError({ fit, tolerance }: Spec): number {
  return Math.max(0.03 * fit.gap, tolerance);
}

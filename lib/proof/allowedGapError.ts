import { drawnGap } from '../fit/compensation.js';
import type { CommonSpec } from '../spec/types.js';

/** How far a measured gap may be from the drawn one: 3 % of it, or the mesh tolerance where that is more. mm. */
export function allowedGapError(spec: CommonSpec): number {
  return Math.max(0.03 * drawnGap(spec), spec.tolerance);
}

/** The least gap that finished meshes may show, as drawn, mm. */
export function leastMeshGap(spec: CommonSpec): number {
  return drawnGap(spec) - allowedGapError(spec);
}

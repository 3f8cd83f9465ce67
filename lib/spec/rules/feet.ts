import type { PlanetarySpec } from '../types.js';

/**
 * Feet that reach down to the bed beside a lower plate keep this share of the module from the root circles: more than
 * the chords of the coarsest teeth (`chordTolerance`) dip into them.
 */
export const FOOT_EDGE = 0.03;

/** How far the feet of sun and ring stand off their root circles, mm; 0 where there are none. */
export function footEdge({ carrier, module }: Pick<PlanetarySpec, 'carrier' | 'module'>): number {
  return carrier === 'none' || carrier.plates === 'above' ? 0 : FOOT_EDGE * module;
}

import type { MeasuredGap } from './kinds/kind.js';
import { gapsOf } from './kinds.js';
import { ranges } from './ranges.js';
import type { Spec } from './types.js';

/**
 * Meshes leave the exact surfaces by up to the tolerance, and their gap is measured no better: within the larger of 3 % and
 * the tolerance. At two fifths of the gap what is measured lies between 0.6 and 1.4 of it, nearer to it than to none or to
 * twice it, and motions that are tried with twice that margin still begin short of the first contact and end beyond it.
 * At a half neither could be told. Our own, no source.
 */
export const MOST_TOLERANCE_PER_GAP = 0.4;

/** The gaps of a file that are measured on meshes as asked and, where walls are drawn further out, as drawn. */
export function measuredGaps(spec: Spec): MeasuredGap[] {
  const { growth } = spec.printer;
  const asked = gapsOf(spec);
  const drawn = asked.map(({ what, gap }) => ({ what: `${what} as drawn`, gap: gap + 2 * growth }));
  return growth < 0 ? [...asked, ...drawn.filter((_, i) => !asked[i].axial)] : asked;
}

/** The coarsest tolerance, up to one, whose meshes still tell whether a file's gaps are kept, mm in ten-thousandths. */
export function coarsestTolerance(spec: Spec, most: number): number {
  const bound = Math.min(...measuredGaps(spec).map(({ gap }) => MOST_TOLERANCE_PER_GAP * gap));
  return bound < most ? Math.max(ranges.tolerance[0], Math.floor(bound * 1e4 + 1e-6) / 1e4) : most;
}

/** What goes with another gap of a file: a tolerance that is small against it, where the file's is not. */
export function gapChange(spec: Spec, gap: number): { 'fit.gap': number; tolerance?: number } {
  const tolerance = coarsestTolerance({ ...spec, fit: { ...spec.fit, gap } }, spec.tolerance);
  return { 'fit.gap': gap, ...(tolerance < spec.tolerance && { tolerance }) };
}

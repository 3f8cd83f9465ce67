import { coarsestTolerance, MOST_TOLERANCE_PER_GAP, measuredGaps } from '../measuredGaps.js';
import { ROUNDING } from '../nearest.js';
import { problemOf } from '../refusal.js';
import type { Rule } from './rule.js';

/** The tolerance is small against every gap that is measured on meshes. */
export const toleranceOfGap: Rule = {
  needs: ['fit.gap', 'printer', 'lips', 'carrier', 'tolerance'],
  find(spec) {
    const { tolerance } = spec;
    const most = coarsestTolerance(spec, tolerance);
    if (tolerance <= most + ROUNDING) return [];
    const { what, gap } = measuredGaps(spec).reduce((a, b) => (b.gap < a.gap ? b : a));
    const rule = `must be at most ${most} mm, ${MOST_TOLERANCE_PER_GAP} × ${what} of ${Number(gap.toFixed(4))} mm: coarser meshes cannot tell whether the gap is kept`;
    return [problemOf('too-coarse', 'tolerance', tolerance, rule, [most])];
  },
};

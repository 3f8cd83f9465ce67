import { type Problem, problemOf } from '../../refusal.js';
import { coarsestTolerance, MOST_TOLERANCE_PER_GAP, measuredGaps } from '../measuredGaps.js';
import { floorThousandth, ROUNDING } from '../nearest.js';
import { ranges } from '../ranges.js';
import type { Spec } from '../types.js';
import { estimatedTriangles } from '../workload.js';
import { lines, type Rule, toothSizes } from './rule.js';

/**
 * No set has more: proving a million takes about ten seconds and half a gigabyte, and slicers labour at more. Common
 * practice.
 */
export const MOST_TRIANGLES = 1_000_000;

/** What the mesh of a file of any kind is sized by. */
const meshed = [
  ...toothSizes,
  'faceWidth',
  'sun.teeth',
  'planets.teeth',
  'planets.count',
  'ring.teeth',
  'pinion',
  'wheel',
  'bar',
  'gear',
  'tolerance',
];

/**
 * Round walls are drawn by chords, which take up to the tolerance from them: of walls two lines thick at least one line
 * is left.
 */
export const chordsOfWalls: Rule = {
  needs: [...meshed, ...lines],
  find(spec) {
    const { tolerance, printer } = spec;
    const { lineWidth } = printer;
    if (tolerance <= lineWidth + ROUNDING) return [];
    if (estimatedTriangles({ ...spec, tolerance: lineWidth }) > MOST_TRIANGLES) {
      const rule = `must be at least tolerance, ${tolerance} mm: chords as far off would leave nothing of such lines`;
      return [problemOf('too-coarse', 'printer.lineWidth', lineWidth, rule, [tolerance])];
    }
    const most = Math.floor(lineWidth * 1e4 + ROUNDING) / 1e4;
    const rule = `must be at most ${most} mm, printer.lineWidth: chords farther off would leave nothing of such lines`;
    return [problemOf('too-coarse', 'tolerance', tolerance, rule, [most])];
  },
};

/** The mesh of the set stays within what can be made and printed. */
export const workload: Rule = {
  needs: [...meshed, 'fit.gap', 'printer', 'lips', 'carrier'],
  find(spec) {
    const triangles = estimatedTriangles(spec);
    if (triangles <= MOST_TRIANGLES) return [];
    const coarsest = coarsestTolerance(
      spec,
      Math.min(ranges.tolerance[1], Math.floor(spec.printer.lineWidth * 1e4 + ROUNDING) / 1e4),
    );
    const tolerance = mostThat((tried) => isWithin({ ...spec, tolerance: tried }), coarsest, spec.tolerance);
    const rule = `is too fine for this set: about ${Math.ceil(triangles / 1e5) / 10} million triangles, at most ${MOST_TRIANGLES / 1e6}`;
    const nearest = [Math.min(coarsest, Math.ceil(tolerance * 1e4) / 1e4)];
    const found: Problem[] =
      spec.tolerance < coarsest
        ? [problemOf('too-much-work', 'tolerance', spec.tolerance, rule, nearest)]
        : [];
    if (isWithin({ ...spec, tolerance: coarsest })) return found;
    const face = mostThat(
      (tried) => isWithin({ ...spec, tolerance: coarsest, faceWidth: tried }),
      0,
      spec.faceWidth,
    );
    const wide = `is too wide for these teeth: at most ${MOST_TRIANGLES / 1e6} million triangles, even at the coarsest tolerance that lines and gaps allow, ${coarsest} mm`;
    return [...found, problemOf('too-much-work', 'faceWidth', spec.faceWidth, wide, [floorThousandth(face)])];
  },
};

function isWithin(spec: Spec): boolean {
  return estimatedTriangles(spec) <= MOST_TRIANGLES;
}

/** The value nearest to `asked` that holds, on the way from one that is taken to. */
function mostThat(holds: (value: number) => boolean, from: number, asked: number): number {
  let [fits, misses] = [from, asked];
  for (let step = 0; step < 40; step++) {
    const middle = (misses + fits) / 2;
    if (holds(middle)) fits = middle;
    else misses = middle;
  }
  return fits;
}

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

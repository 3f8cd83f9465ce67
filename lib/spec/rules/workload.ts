import { ROUNDING } from '../nearest.js';
import { ranges } from '../ranges.js';
import { estimatedTriangles } from '../workload.js';
import type { Rule } from './rule.js';

/** More could take minutes and gigabytes, and no slicer would take the file. Common practice. */
const MOST_TRIANGLES = 3_000_000;

/** What the mesh of a file of any kind is sized by. */
const meshed = [
  'module',
  'pressureAngle',
  'rack',
  'helix',
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
  needs: [...meshed, 'printer.nozzle', 'printer.lineWidth'],
  find(spec) {
    const { tolerance, printer } = spec;
    const { lineWidth } = printer;
    if (tolerance <= lineWidth + ROUNDING) return [];
    if (estimatedTriangles({ ...spec, tolerance: lineWidth }) > MOST_TRIANGLES) {
      const rule = `must be at least tolerance, ${tolerance} mm: chords as far off would leave nothing of such lines`;
      return [{ parameter: 'printer.lineWidth', value: lineWidth, rule, nearest: [tolerance] }];
    }
    const most = Math.floor(lineWidth * 1e4 + ROUNDING) / 1e4;
    const rule = `must be at most ${most} mm, printer.lineWidth: chords farther off would leave nothing of such lines`;
    return [{ parameter: 'tolerance', value: tolerance, rule, nearest: [most] }];
  },
};

/** The mesh of the set stays within what can be made and printed. */
export const workload: Rule = {
  needs: meshed,
  find(spec) {
    const triangles = estimatedTriangles(spec);
    if (triangles <= MOST_TRIANGLES) return [];
    let [misses, fits] = [spec.tolerance, ranges.tolerance[1]];
    for (let step = 0; step < 40; step++) {
      const middle = (misses + fits) / 2;
      if (estimatedTriangles({ ...spec, tolerance: middle }) <= MOST_TRIANGLES) fits = middle;
      else misses = middle;
    }
    const rule = `is too fine for this set: about ${Math.ceil(triangles / 1e5) / 10} million triangles, at most ${MOST_TRIANGLES / 1e6}`;
    return [{ parameter: 'tolerance', value: spec.tolerance, rule, nearest: [Math.ceil(fits * 1e4) / 1e4] }];
  },
};

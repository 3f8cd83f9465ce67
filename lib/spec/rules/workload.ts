import { ranges } from '../ranges.js';
import { estimatedTriangles } from '../workload.js';
import type { Rule } from './rule.js';

/** More could take minutes and gigabytes, and no slicer would take the file. Common practice. */
const MOST_TRIANGLES = 3_000_000;

/** The mesh of the set stays within what can be made and printed. */
export const workload: Rule = {
  needs: [
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
  ],
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

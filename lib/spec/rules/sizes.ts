import { type Problem, problemOf } from '../../refusal.js';
import { BEVEL_FOR_LIPS, deepestByFace } from '../bevelLimits.js';
import { complete } from '../complete.js';
import { type FileOf, gapsOf, type Kind } from '../kinds.js';
import { floorThousandth, ROUNDING } from '../nearest.js';
import { LARGEST, MOST_BEVEL_SHARE, MOST_GAP_PER_MODULE, ranges } from '../ranges.js';
import type { CommonSpec, SpecOf } from '../types.js';
import { openingsOf, wallsOf } from '../walls.js';
import { gears, lines, moduleParameter, type Rule } from './rule.js';

/** The gap fits the size of the teeth. */
export const gapOfModule: Rule = {
  needs: ['module', 'helix', 'fit.gap'],
  find({ module, fit: { gap } }) {
    const most = floorThousandth(MOST_GAP_PER_MODULE * module);
    if (gap <= MOST_GAP_PER_MODULE * module + ROUNDING) return [];
    const rule = `must be at most ${most} mm: ${MOST_GAP_PER_MODULE} × module`;
    return [problemOf('beyond-limit', 'fit.gap', gap, rule, [most])];
  },
};

/** A nozzle lays no layer higher than its own width. Common practice. */
export const layerOfNozzle: Rule = {
  needs: ['printer.nozzle', 'printer.layer'],
  find({ printer: { nozzle, layer } }) {
    if (layer <= nozzle) return [];
    const rule = `must be at most ${nozzle} mm: printer.nozzle`;
    return [problemOf('beyond-limit', 'printer.layer', layer, rule, [nozzle])];
  },
};

/** Thinner rims than this many times the growth would be lost to it. Common practice. */
const RIM_PER_GROWTH = 4;

/**
 * A wall stands out by no more than half the line it is laid with, walls and bores survive being set back by it, and
 * a gap is left to draw where walls stand back instead.
 */
export const wallGrowth: Rule = {
  needs: ['printer.growth', ...lines, 'fit.gap', 'carrier', 'lips', 'module', ...gears, 'bar.backing'],
  find(spec) {
    const { growth, lineWidth } = spec.printer;
    const gaps = gapsOf(spec).filter(({ axial }) => !axial);
    const gap = Math.min(spec.fit.gap, ...gaps.map(({ gap }) => gap));
    const [lowest, highest] = ranges.growth;
    const most = floorThousandth(
      Math.min(highest, lineWidth / 2, ...wallsOf(spec).map((wall) => wall / RIM_PER_GROWTH)),
    );
    const opening = Math.min(...openingsOf(spec));
    const least = -floorThousandth(
      Math.min(-lowest, lineWidth / 2, opening / RIM_PER_GROWTH, Math.max(0, (gap - ranges.gap[0]) / 2)),
    );
    if (growth <= most + ROUNDING && growth >= least - ROUNDING) return [];
    const rule = `must be from ${least} to ${most} mm with these lines, gaps, rim and these openings`;
    return [problemOf('beyond-limit', 'printer.growth', growth, rule, [growth > most ? most : least])];
  },
};

/** Far below what prints, far above the rounding of 32-bit coordinates at the largest radius, mm. */
const LEAST_BEVEL = 0.001;

/** What the bevels of a file of any kind follow from. */
const bevelled = ['module', 'helix', 'rack', 'pressureAngle', 'fit.gap', 'faceWidth', 'bevel'];

/** A bevel cuts no deeper than the tooth stands out, and leaves a face between the two ends. */
export const bevelSize: Rule = { needs: bevelled, find: (spec) => bevelProblems(spec, 1) };

/** So does one under lips, which is deeper. */
export const lippedBevelSize: Rule<'planetary'> = {
  needs: bevelled,
  find: (spec) => bevelProblems(spec, spec.lips ? BEVEL_FOR_LIPS : 1),
};

function bevelProblems(spec: CommonSpec, deeper: number): Problem[] {
  const { module, rack, fit, faceWidth, bevel } = spec;
  if (bevel.size > 0 && bevel.size < LEAST_BEVEL) {
    const rule = `must be 0 for none, or at least ${LEAST_BEVEL} mm: a smaller one is lost in the numbers of a mesh`;
    return [problemOf('too-small', 'bevel.size', bevel.size, rule, [0, LEAST_BEVEL])];
  }
  const byTooth = deeper * rack.addendum * module + fit.gap;
  const byFace = deepestByFace(faceWidth, bevel.angle);
  if (bevel.size <= Math.min(byTooth, byFace) + ROUNDING) return [];
  const most = floorThousandth(Math.min(byTooth, byFace));
  const why =
    byTooth <= byFace
      ? `${deeper === 1 ? '' : `${deeper} × `}rack.addendum × module + fit.gap`
      : `at this angle a bevel is then ${MOST_BEVEL_SHARE} × faceWidth high`;
  const rule = `must be at most ${most} mm: ${why}`;
  return [problemOf('no-room', 'bevel.size', bevel.size, rule, [most])];
}

/**
 * A problem of the module where something is larger than the largest that is ever made.
 * @param sizeOf what is measured, mm
 */
export function sizeProblems<K extends Kind>(
  spec: SpecOf<K>,
  file: FileOf<K>,
  makes: string,
  along: string,
  sizeOf: (spec: SpecOf<K>) => number,
): Problem[] {
  if (sizeOf(spec) <= LARGEST) return [];
  const parameter = moduleParameter(file);
  const value = file[parameter]!;
  // Bisection: walls and the lean of a bar's teeth do not grow with the module, and the least module always fits.
  let [fits, misses] = [ranges.module[0], value];
  for (let step = 0; step < 60; step++) {
    const middle = (fits + misses) / 2;
    if (sizeOf(complete<K>({ ...file, [parameter]: middle }, '')) <= LARGEST) fits = middle;
    else misses = middle;
  }
  const rule = `makes ${makes} ${LARGEST} mm ${along}`;
  return [problemOf('too-big', parameter, value, rule, [floorThousandth(fits)])];
}

import { boreProblems } from '../../features/bore.js';
import { type Problem, problemOf } from '../../refusal.js';
import { ranges } from '../ranges.js';
import type { PlanetarySpec } from '../types.js';
import { featureProblems, type Roots } from './features.js';
import { footEdge } from './feet.js';
import { rootProblems, rootRadius, rootsFollow } from './roots.js';
import { gears, lines, type Rule, toothSizes } from './rule.js';
import { sizeProblems } from './sizes.js';

const MOST_RING_TEETH = ranges.ringTeeth[1];

/** The sun has a body inside its root circle. */
export const sunRoot: Rule<'planetary'> = {
  needs: [...toothSizes, 'fit.gap', 'sun.teeth', 'sun.profileShift'],
  find: (spec) => rootProblem(spec, 'sun'),
};

/** The planets have a body inside their root circle. */
export const planetRoot: Rule<'planetary'> = {
  needs: [...toothSizes, 'fit.gap', 'planets.teeth', 'planets.profileShift'],
  find: (spec) => rootProblem(spec, 'planets'),
};

/** The ring goes around a planet, and a ring that follows from the others has a count in range. */
export const ringTeeth: Rule<'planetary'> = {
  needs: ['sun.teeth', 'planets.teeth', 'ring.teeth'],
  find({ sun, planets, ring }, file) {
    if (ring.teeth > MOST_RING_TEETH && file.ring.teeth === undefined) {
      const rule = `gives a ring of ${ring.teeth} teeth (sun + 2 × planets); at most ${MOST_RING_TEETH}`;
      const nearest = [Math.floor((MOST_RING_TEETH - sun.teeth) / 2)];
      return [problemOf('beyond-limit', 'planets.teeth', planets.teeth, rule, nearest)];
    }
    if (ring.teeth > planets.teeth) return [];
    const rule = `must be more than planets.teeth, ${planets.teeth}`;
    const nearest = [Math.min(sun.teeth + 2 * planets.teeth, MOST_RING_TEETH)];
    return [problemOf('beyond-limit', 'ring.teeth', ring.teeth, rule, nearest)];
  },
};

/** At least two lines of wall stay between a bore and the sun's root circle. */
export const boreWall: Rule<'planetary'> = {
  needs: [...toothSizes, 'fit.gap', ...gears, 'carrier', ...lines],
  find: (spec) => (rootsFollow(spec) ? sunBoreProblems(spec, rootRadius(spec, 'sun')) : []),
};

/** The set is no larger than the largest that is ever made. */
export const outerDiameter: Rule<'planetary'> = {
  needs: [...toothSizes, 'sun.teeth', 'sun.profileShift', 'planets.teeth', 'planets.profileShift', 'ring'],
  find: (spec, file) => sizeProblems(spec, file, 'the set more than', 'across', outerDiameterOf),
};

/** What `sunRoot` and `planetRoot` find, for shifts that were still to be found when those asked. */
export function rootsProblems(spec: PlanetarySpec): Problem[] {
  return [...rootProblem(spec, 'sun'), ...rootProblem(spec, 'planets')];
}

/** What finds no room inside the teeth of the sun and planets, and outside those of the ring. @param roots as made, mm */
export function bodyProblems(spec: PlanetarySpec, roots: Roots): Problem[] {
  return [...sunBoreProblems(spec, roots.sun), ...featureProblems(spec, roots)];
}

function sunBoreProblems({ sun, printer, ...spec }: PlanetarySpec, root: number): Problem[] {
  return boreProblems('sun', sun.bore, root - footEdge(spec), printer.lineWidth);
}

function rootProblem(spec: PlanetarySpec, part: 'sun' | 'planets'): Problem[] {
  return rootProblems(spec, part, spec[part]);
}

function outerDiameterOf(spec: PlanetarySpec): number {
  return 2 * (rootRadius(spec, 'ring') + spec.ring.rim);
}

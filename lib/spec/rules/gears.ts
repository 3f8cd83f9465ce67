import { gearSizes } from '../../tooth/gear.js';
import { completePlanetary } from '../complete.js';
import { floorThousandth } from '../nearest.js';
import { LARGEST, ranges } from '../ranges.js';
import { type Problem, problemOf } from '../refusal.js';
import type { CommonSpec, PairSpec, PlanetarySpec } from '../types.js';
import { boreProblems } from './bores.js';
import { featureProblems, type Roots } from './features.js';
import { footEdge } from './room.js';
import { moduleParameter, type Rule, toothSizes } from './rule.js';

/** Least root radius, in modules: below it hardly any body is left inside the teeth. */
const LEAST_ROOT = 0.5;
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
      return [problemOf('wrong-ring', 'planets.teeth', planets.teeth, rule, nearest)];
    }
    if (ring.teeth > planets.teeth) return [];
    const rule = `must be more than planets.teeth, ${planets.teeth}`;
    return [
      problemOf('wrong-ring', 'ring.teeth', ring.teeth, rule, [
        Math.min(sun.teeth + 2 * planets.teeth, MOST_RING_TEETH),
      ]),
    ];
  },
};

/** At least two lines of wall stay between a bore and the sun's root circle. */
export const boreWall: Rule<'planetary'> = {
  needs: [
    ...toothSizes,
    'fit.gap',
    'sun',
    'planets',
    'ring',
    'carrier',
    'printer.nozzle',
    'printer.lineWidth',
  ],
  find: (spec) => (rootsFollow(spec) ? sunBoreProblems(spec, rootRadius(spec, 'sun')) : []),
};

/** The set is no larger than the largest that is ever made. */
export const outerDiameter: Rule<'planetary'> = {
  needs: [...toothSizes, 'sun.teeth', 'sun.profileShift', 'planets.teeth', 'planets.profileShift', 'ring'],
  find(spec, file) {
    if (outerDiameterOf(spec) <= LARGEST) return [];
    const parameter = moduleParameter(file);
    const value = file[parameter]!;
    // Bisection: rim and teeth both grow with the module, and the least module always fits.
    let [fits, misses] = [ranges.module[0], value];
    for (let step = 0; step < 60; step++) {
      const middle = (fits + misses) / 2;
      if (outerDiameterOf(completePlanetary({ ...file, [parameter]: middle }, '')) <= LARGEST) fits = middle;
      else misses = middle;
    }
    const rule = `makes the set more than ${LARGEST} mm across`;
    return [problemOf('too-big', parameter, value, rule, [floorThousandth(fits)])];
  },
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

/**
 * Whether a gear with teeth outside has a body inside them. Nothing while its shift is still to be found: those who
 * find it ask again.
 * @param part its key in the file
 */
export function rootProblems(
  spec: CommonSpec,
  part: string,
  gear: { teeth: number; profileShift?: number },
): Problem[] {
  if (gear.profileShift === undefined) return [];
  const { teeth } = gear;
  const radius = (count: number) => madeRootRadius(spec, { ...gear, teeth: count, internal: false });
  const short = LEAST_ROOT * spec.module - radius(teeth);
  if (short <= 0) return [];
  const nearest = [teeth + Math.ceil(short / (radius(teeth + 1) - radius(teeth)))];
  const rule = `must be at least ${nearest[0]} with this rack and shift: hardly any body is left inside the teeth`;
  return [problemOf('thin-body', `${part}.teeth`, teeth, rule, nearest)];
}

/** Root radius of a gear, mm, as `madeRootRadius` has it. */
export function rootRadius(spec: PlanetarySpec, part: 'sun' | 'planets' | 'ring'): number {
  return madeRootRadius(spec, { ...spec[part], internal: part === 'ring' });
}

/**
 * Whether `madeRootRadius` is the radius that roots are made with: shifts are given, and where the rack's clearance is
 * less than the gap there are none, so that mates stand where the rack has them. Else the pairs must be known:
 * `lib/fit` asks then.
 */
export function rootsFollow(spec: PlanetarySpec | PairSpec): boolean {
  const gears = spec.kind === 'pair' ? [spec.pinion, spec.wheel] : [spec.sun, spec.planets, spec.ring];
  const shifts = gears.map(({ profileShift }) => profileShift);
  if (shifts.includes(undefined)) return false;
  return deeperBy(spec) === 0 || shifts.every((shift) => shift === 0);
}

/** How much deeper than the rack leaves them roots may be for the gap, mm. */
function deeperBy({ fit, rack, module }: CommonSpec): number {
  return Math.max(0, fit.gap - (rack.dedendum - rack.addendum) * module);
}

/** Root radius, roots deepened where the rack's clearance is less than the gap, mm. */
export function madeRootRadius(
  spec: CommonSpec,
  // Where a shift is still to be found, the standard tooth stands for it: the limits that ask then are wide ones.
  { teeth, profileShift = 0, internal }: { teeth: number; profileShift?: number; internal: boolean },
): number {
  const { module, pressureAngle, rack, helix } = spec;
  const gear = { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal };
  const deeper = deeperBy(spec);
  return gearSizes(gear).rootRadius + (internal ? deeper : -deeper);
}

function outerDiameterOf(spec: PlanetarySpec): number {
  return 2 * (rootRadius(spec, 'ring') + spec.ring.rim);
}

import { gearSizes } from '../../tooth/gear.js';
import { completePlanetary } from '../complete.js';
import { floorThousandth } from '../nearest.js';
import { LARGEST, ranges } from '../ranges.js';
import type { Problem } from '../refusal.js';
import type { CommonSpec, PlanetarySpec } from '../types.js';
import { boreProblems } from './bores.js';
import { featureProblems } from './features.js';
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
      return [{ parameter: 'planets.teeth', value: planets.teeth, rule, nearest }];
    }
    if (ring.teeth > planets.teeth) return [];
    const rule = `must be more than planets.teeth, ${planets.teeth}`;
    return [
      {
        parameter: 'ring.teeth',
        value: ring.teeth,
        rule,
        nearest: [Math.min(sun.teeth + 2 * planets.teeth, MOST_RING_TEETH)],
      },
    ];
  },
};

/** At least two lines of wall stay between a bore and the sun's root circle. */
export const boreWall: Rule<'planetary'> = {
  needs: [...toothSizes, 'fit.gap', 'sun', 'printer.nozzle', 'printer.lineWidth'],
  find: sunBoreProblems,
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
    return [{ parameter, value, rule, nearest: [floorThousandth(fits)] }];
  },
};

/** What `sunRoot`, `planetRoot` and `boreWall` find, for shifts that were still to be found when those asked. */
export function bodyProblems(spec: PlanetarySpec): Problem[] {
  const roots = [...rootProblem(spec, 'sun'), ...rootProblem(spec, 'planets')];
  return roots.length ? roots : [...sunBoreProblems(spec), ...featureProblems(spec)];
}

/** Nothing while the sun's shift is still to be found: there is no root circle yet, and `setGears` asks again. */
function sunBoreProblems(spec: PlanetarySpec): Problem[] {
  const { bore, profileShift } = spec.sun;
  if (profileShift === undefined) return [];
  return boreProblems('sun', bore, rootRadius(spec, 'sun'), spec.printer.lineWidth);
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
  return [{ parameter: `${part}.teeth`, value: teeth, rule, nearest }];
}

/** Root radius of a gear as made, mm; that of the standard tooth where its shift is still to be found. */
export function rootRadius(spec: PlanetarySpec, part: 'sun' | 'planets' | 'ring'): number {
  return madeRootRadius(spec, { ...spec[part], internal: part === 'ring' });
}

/** Root radius as made, roots deepened where the rack's clearance is less than the gap, mm. */
export function madeRootRadius(
  spec: CommonSpec,
  // Where a shift is still to be found, the standard tooth stands for it: the limits that ask then are wide ones.
  { teeth, profileShift = 0, internal }: { teeth: number; profileShift?: number; internal: boolean },
): number {
  const { module, pressureAngle, rack, helix } = spec;
  const gear = { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal };
  const deeper = Math.max(0, spec.fit.gap - (rack.dedendum - rack.addendum) * module);
  return gearSizes(gear).rootRadius + (internal ? deeper : -deeper);
}

function outerDiameterOf(spec: PlanetarySpec): number {
  return 2 * (rootRadius(spec, 'ring') + spec.ring.rim);
}

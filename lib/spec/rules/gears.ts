import { gearSizes } from '../../tooth/gear.js';
import { complete } from '../complete.js';
import { floorThousandth, ROUNDING } from '../nearest.js';
import type { Problem } from '../refusal.js';
import type { Bore, PlanetarySpec } from '../types.js';
import { featureProblems } from './features.js';
import { moduleParameter, type Rule, toothSizes } from './rule.js';

/** Least root radius, in modules: below it hardly any body is left inside the teeth. */
const LEAST_ROOT = 0.5;
const MOST_RING_TEETH = 1000;
/** Largest outer diameter of a set, mm: several times any printer's bed. */
const LARGEST_SET = 2000;
/** Least size of a bore, mm, as in the schema. */
const LEAST_BORE = 0.5;
/** Lines of wall around a bore. Common practice. */
const BORE_LINES = 2;

/** The sun has a body inside its root circle. */
export const sunRoot: Rule = {
  needs: [...toothSizes, 'fit.gap', 'sun.teeth', 'sun.profileShift'],
  find: (spec) => rootProblem(spec, 'sun'),
};

/** The planets have a body inside their root circle. */
export const planetRoot: Rule = {
  needs: [...toothSizes, 'fit.gap', 'planets.teeth', 'planets.profileShift'],
  find: (spec) => rootProblem(spec, 'planets'),
};

/** The ring goes around a planet, and a ring that follows from the others has a count in range. */
export const ringTeeth: Rule = {
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
export const boreWall: Rule = {
  needs: [...toothSizes, 'fit.gap', 'sun', 'printer.nozzle', 'printer.lineWidth'],
  find: boreProblems,
};

/** The set is no larger than the largest that is ever made. */
export const outerDiameter: Rule = {
  needs: [...toothSizes, 'sun.teeth', 'sun.profileShift', 'planets.teeth', 'planets.profileShift', 'ring'],
  find(spec, file) {
    if (outerDiameterOf(spec) <= LARGEST_SET) return [];
    const parameter = moduleParameter(file);
    const value = file[parameter]!;
    // Bisection: rim and teeth both grow with the module, and the least module always fits.
    let [fits, misses] = [0.2, value];
    for (let step = 0; step < 60; step++) {
      const middle = (fits + misses) / 2;
      if (outerDiameterOf(complete({ ...file, [parameter]: middle }, '')) <= LARGEST_SET) fits = middle;
      else misses = middle;
    }
    const rule = `makes the set more than ${LARGEST_SET} mm across`;
    return [{ parameter, value, rule, nearest: [floorThousandth(fits)] }];
  },
};

/** What `sunRoot`, `planetRoot` and `boreWall` find, for shifts that were still to be found when those asked. */
export function bodyProblems(spec: PlanetarySpec): Problem[] {
  const roots = [...rootProblem(spec, 'sun'), ...rootProblem(spec, 'planets')];
  return roots.length ? roots : [...boreProblems(spec), ...featureProblems(spec)];
}

/** Nothing while the sun's shift is still to be found: there is no root circle yet, and `setGears` asks again. */
function boreProblems(spec: PlanetarySpec): Problem[] {
  const { bore, profileShift } = spec.sun;
  if (bore.shape === 'none' || profileShift === undefined) return [];
  const room = floorThousandth(rootRadius(spec, 'sun') - BORE_LINES * spec.printer.lineWidth);
  const size = sizeOf(bore);
  const most = floorThousandth(room * size.perRadius);
  if (most < LEAST_BORE) {
    const rule = 'no bore leaves two lines of wall inside the root circle of this sun';
    return [{ parameter: 'sun.bore', value: bore, rule, nearest: [{ shape: 'none' }] }];
  }
  if (size.value > most + ROUNDING) {
    const rule = `must be at most ${most} mm: two lines of wall inside the sun's root circle`;
    return [{ parameter: size.parameter, value: size.value, rule, nearest: [most] }];
  }
  return bore.shape === 'D' ? flatProblem(bore.diameter, bore.acrossFlat) : [];
}

function rootProblem(spec: PlanetarySpec, part: 'sun' | 'planets'): Problem[] {
  // A shift that is still to be found is asked again by `setGears`.
  if (spec[part].profileShift === undefined) return [];
  const short = LEAST_ROOT * spec.module - rootRadius(spec, part);
  if (short <= 0) return [];
  const { teeth } = spec[part];
  const perTooth = rootRadius(spec, part, teeth + 1) - rootRadius(spec, part);
  const nearest = [teeth + Math.ceil(short / perTooth)];
  const rule = `must be at least ${nearest[0]} with this rack and shift: hardly any body is left inside the teeth`;
  return [{ parameter: `${part}.teeth`, value: teeth, rule, nearest }];
}

/** Root radius of a gear as made, mm; that of the standard tooth where its shift is still to be found. */
export function rootRadius(
  spec: PlanetarySpec,
  part: 'sun' | 'planets' | 'ring',
  teeth = spec[part].teeth,
): number {
  const { module, pressureAngle, rack, helix } = spec;
  // Where it is still to be found, the standard tooth stands for it: the limits that ask then are wide ones.
  const { profileShift = 0 } = spec[part];
  const internal = part === 'ring';
  const gear = { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal };
  // Roots are deepened where the rack's clearance is less than the gap.
  const deeper = Math.max(0, spec.fit.gap - (rack.dedendum - rack.addendum) * module);
  return gearSizes(gear).rootRadius + (internal ? deeper : -deeper);
}

function outerDiameterOf(spec: PlanetarySpec): number {
  return 2 * (rootRadius(spec, 'ring') + spec.ring.rim);
}

/** The size that a bore is made larger or smaller by, and how it goes with the radius of its outermost corner. */
function sizeOf(bore: Exclude<Bore, { shape: 'none' }>) {
  switch (bore.shape) {
    case 'round':
    case 'D':
      return { parameter: 'sun.bore.diameter', value: bore.diameter, perRadius: 2 };
    case 'hexagon':
      return { parameter: 'sun.bore.acrossFlats', value: bore.acrossFlats, perRadius: Math.sqrt(3) };
    case 'square':
      return { parameter: 'sun.bore.acrossFlats', value: bore.acrossFlats, perRadius: Math.SQRT2 };
  }
}

/** The flat of a D lies between the middle and just inside the far side, or it is no D. */
function flatProblem(diameter: number, acrossFlat: number): Problem[] {
  const [least, most] = [diameter / 2, 0.98 * diameter];
  if (acrossFlat >= least - ROUNDING && acrossFlat <= most + ROUNDING) return [];
  const [low, high] = [Math.ceil(least * 1000) / 1000, floorThousandth(most)];
  return [
    {
      parameter: 'sun.bore.acrossFlat',
      value: acrossFlat,
      rule: `must be from ${low} to ${high} mm: half the diameter to 0.98 × the diameter`,
      nearest: [acrossFlat < least ? low : high],
    },
  ];
}

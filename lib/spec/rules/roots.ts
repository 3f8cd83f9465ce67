import { type Problem, problemOf } from '../../refusal.js';
import { gearSizes } from '../../tooth/gear.js';
import { gearsOf } from '../kinds.js';
import type { CommonSpec, PlanetarySpec, Spec } from '../types.js';

/** Least root radius, in modules: below it hardly any body is left inside the teeth. */
const LEAST_ROOT = 0.5;

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
 * `lib/fit` asks then. A gear that meets no other is made by the rack.
 */
export function rootsFollow(spec: Spec): boolean {
  const shifts = gearsOf(spec).map(({ profileShift }) => profileShift);
  if (shifts.length === 1) return true;
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

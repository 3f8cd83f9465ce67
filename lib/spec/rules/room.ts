import { type Problem, problemOf } from '../../refusal.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../nearest.js';
import type { PlanetarySpec } from '../types.js';

/** Lines of wall beside every opening. Common practice. */
export const WALL_LINES = 2;
/**
 * Feet that reach down to the bed beside a lower plate keep this share of the module from the root circles: more than
 * the chords of the coarsest teeth (`chordTolerance`) dip into them.
 */
export const FOOT_EDGE = 0.03;

/** How far the feet of sun and ring stand off their root circles, mm; 0 where there are none. */
export function footEdge({ carrier, module }: Pick<PlanetarySpec, 'carrier' | 'module'>): number {
  return carrier === 'none' || carrier.plates === 'above' ? 0 : FOOT_EDGE * module;
}

/** Layers of floor under every pit. Common practice. */
export const FLOOR_LAYERS = 4;

/** What bounds features: sizes of the body they are in, mm. */
export interface Body {
  /** Path of the part in the file, such as `sun`. */
  part: string;
  /** Radius of its root circle as made. */
  root: number;
  faceWidth: number;
  /** Least width of a wall, and least thickness of a floor. */
  wall: number;
  floor: number;
}

/** A problem unless `value` is at most `most`; `none` of the feature is offered where no size above `least` works. */
export function atMost(
  parameter: string,
  value: number,
  most: number,
  why: string,
  least: number,
): Problem[] {
  if (value <= most + ROUNDING) return [];
  const limit = floorThousandth(most);
  if (limit >= least)
    return [problemOf('no-room', parameter, value, `must be at most ${limit} mm: ${why}`, [limit])];
  const [feature, size] = [featureOf(parameter), parameter.split('.').slice(2).join('.')];
  return [problemOf('no-room', feature, { [size]: value }, `finds no room: ${why}`, ['none'])];
}

/** A problem unless `value` is at least `least`, which is offered. */
export function atLeast(parameter: string, value: number, least: number, why: string): Problem[] {
  if (value >= least - ROUNDING) return [];
  const limit = ceilThousandth(least);
  return [problemOf('too-small', parameter, value, `must be at least ${limit} mm: ${why}`, [limit])];
}

/** The problem of a feature that cannot be together with another one. */
export function notWith(parameter: string, value: unknown, other: string): Problem[] {
  return [problemOf('excluded', parameter, value, `must be none where ${other} is given`, ['none'])];
}

/** The feature that a size belongs to: `sun.nut` for `sun.nut.depth`. */
function featureOf(parameter: string): string {
  return parameter.split('.').slice(0, 2).join('.');
}

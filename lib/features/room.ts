import { type Problem, problemOf } from '../refusal.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../spec/nearest.js';

/** Lines of wall beside every opening. Common practice. */
export const WALL_LINES = 2;
/** Layers of floor under every pit. Common practice. */
export const FLOOR_LAYERS = 4;

/** Why a size about the axis is bounded. */
export const WALLED = 'two lines of wall inside the root circle';

/** Width across corners of a polygon for its width across flats. */
export const CORNER = { hexagon: 2 / Math.sqrt(3), square: Math.SQRT2 };

/** What bounds features: sizes of the body they are in, mm. */
export interface Body {
  /** Path of the part in the file, such as `sun`. */
  part: string;
  /** Radius of its root circle as made. */
  root: number;
  faceWidth: number;
  /** Wall outside the root circle of a ring; 0 for other parts. */
  rim: number;
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

/** A problem unless there are at most so many. */
export function countAtMost(parameter: string, value: number, most: number, why: string): Problem[] {
  if (value <= most) return [];
  return [problemOf('no-room', parameter, value, `must be at most ${most}: ${why}`, [most])];
}

/** Holes around a circle stand `apart` mm from middle to middle at least. */
export function spaced(parameter: string, count: number, circle: number, apart: number): Problem[] {
  const most = Math.floor(Math.PI / Math.asin(Math.min(1, apart / circle)) + 1e-9);
  return countAtMost(parameter, count, most, 'walls between the holes');
}

/** The feature that a size belongs to: `sun.nut` for `sun.nut.depth`. */
function featureOf(parameter: string): string {
  return parameter.split('.').slice(0, 2).join('.');
}

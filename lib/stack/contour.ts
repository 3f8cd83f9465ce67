import { polar } from '../tooth/polar.js';

/** x and y, mm. */
export type Point = readonly [number, number];

/**
 * A closed polyline at one height, counter-clockwise seen from +z, its last point joined to the first. Lengths in mm.
 * Walls and faces that name the very same contour (the object, not its like) share its vertices.
 */
export interface Contour {
  readonly z: number;
  readonly points: readonly Point[];
}

/** A contour, counter-clockwise whichever way its points came. */
export function contourAt(points: readonly Point[], z: number): Contour {
  return { z, points: signedArea(points) < 0 ? points.toReversed() : points };
}

/** The same outline at another height, as a contour of its own. */
export function atHeight({ points }: Contour, z: number): Contour {
  return { z, points };
}

/** Number of chords that keep within `tolerance` of a circle: a multiple of four, at least 12. */
export function chordsOf(radius: number, tolerance: number): number {
  const half = Math.acos(Math.max(0, 1 - tolerance / radius));
  return Math.max(12, 4 * Math.ceil(Math.PI / half / 4));
}

/**
 * Points of a circle, the first one at angle 0.
 * @param tolerance largest distance of a chord from the circle, mm; or give the number of chords as `count`
 */
export function circlePoints(
  radius: number,
  tolerance: number,
  centre: Point = [0, 0],
  count = chordsOf(radius, tolerance),
): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const [x, y] = polar(radius, (2 * Math.PI * i) / count);
    return [x + centre[0], y + centre[1]];
  });
}

/** Corners of a regular polygon about the origin, a flat facing +x. */
export function polygonPoints(sides: number, acrossFlats: number): Point[] {
  const radius = acrossFlats / 2 / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i) => polar(radius, (2 * Math.PI * (i + 0.5)) / sides));
}

/** Points turned about the origin (radians, counter-clockwise), then moved. */
export function placedPoints(points: readonly Point[], angle: number, [dx, dy]: Point): Point[] {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return points.map(([x, y]) => [x * cos - y * sin + dx, x * sin + y * cos + dy]);
}

/** Mirror image y → −y, counter-clockwise again. */
export function mirroredPoints(points: readonly Point[]): Point[] {
  return points.map(([x, y]): Point => [x, -y]).reverse();
}

/** Area within a closed polyline, mm²: positive when it runs counter-clockwise. */
export function signedArea(points: readonly Point[]): number {
  let twice = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++)
    twice += points[j][0] * points[i][1] - points[i][0] * points[j][1];
  return twice / 2;
}

/** Distance of the farthest point from the origin, mm. */
export function reachOf(points: readonly Point[]): number {
  // As arguments of one call, the points of a fine outline would be too many.
  return points.reduce((most, [x, y]) => Math.max(most, Math.hypot(x, y)), 0);
}

import type { PartOutline } from '../../solid/setOutlines.js';
import type { Hatch } from './styles.js';
import type { PagePoint } from './svg.js';

/** Where the drawing's plane lies on the page. */
export interface Placing {
  /** Page place of `about`. */
  at: PagePoint;
  /** Point of the plane that comes to `at`, mm [the origin]. */
  about?: readonly [number, number];
  /** Page mm for each mm of the part [1]. */
  scale?: number;
}

/** A point of the plane (y up) on the page (y down). */
export function toPage(
  [x, y]: readonly [number, number],
  { at, about = [0, 0], scale = 1 }: Placing,
): PagePoint {
  return [at[0] + scale * (x - about[0]), at[1] - scale * (y - about[1])];
}

/** The points of an outline in the plane of the set: turned with its gear and moved to its place. */
export function inPlane(points: Float64Array, { centre, rotation }: PartOutline): [number, number][] {
  const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
  return Array.from({ length: points.length / 2 }, (_, i) => {
    const [x, y] = [points[2 * i], points[2 * i + 1]];
    return [centre[0] + x * cos - y * sin, centre[1] + x * sin + y * cos];
  });
}

/** Which kind of gear a part's name stands for. */
export function kindOf({ name }: { name: string }): Hatch {
  return name === 'sun' || name === 'ring' ? name : 'planet';
}

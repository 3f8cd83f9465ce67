import type { Mesh } from '../../solid/mesh.js';
import { type Corner, cutBy } from './convexOutline.js';

/** A ring with teeth inside, as drawn: where its axis is, how far out its roots lie, and between which heights. mm. */
export interface RimPlace {
  centre: readonly [number, number];
  rootRadius: number;
  from: number;
  to: number;
}

/** This near to the end faces a rim is not looked at, mm: what a script joined to a face stands on it there. */
const FACE = 0.01;

/**
 * Material left between the roots of a ring and the walls that a script cut into its rim, mm: the least distance from
 * the axis of any new wall beside the teeth, less the root radius. Infinity where there is none.
 * @param whole for every triangle 1 where the ring had it before
 */
export function rimOutside(
  { positions: p, triangles }: Mesh,
  whole: Uint8Array,
  { centre: [x, y], rootRadius, from, to }: RimPlace,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let t = 0; t < triangles.length; t += 3) {
    if (whole[t / 3]) continue;
    const corners = [0, 1, 2]
      .map((k) => 3 * triangles[t + k])
      .map((at): Corner => [p[at] - x, p[at + 1] - y, p[at + 2]]);
    const beside = cutBy(
      cutBy(corners, ([, , z]) => z - from - FACE),
      ([, , z]) => to - FACE - z,
    );
    const radius = Math.min(...beside.map((corner, i) => radiusOf(corner, beside[(i + 1) % beside.length])));
    if (radius >= rootRadius) least = Math.min(least, radius - rootRadius);
  }
  return least;
}

/** Least distance of a side from the axis, seen from above. */
function radiusOf([ax, ay]: Corner, [bx, by]: Corner): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const share = length > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / length)) : 0;
  return Math.hypot(ax + share * dx, ay + share * dy);
}

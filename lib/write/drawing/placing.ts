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

/** A point of the plane (second coordinate up) on the page (y down). */
export function toPage(
  [x, y]: readonly [number, number],
  { at, about = [0, 0], scale = 1 }: Placing,
): PagePoint {
  return [at[0] + scale * (x - about[0]), at[1] - scale * (y - about[1])];
}

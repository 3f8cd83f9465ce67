import type { PitchDraft } from './pitchVertices.js';
import { placeOf, readCorners } from './places.js';

/**
 * How far triangles of a patch stand out over its edge, mm: 0 where all lie the same way up, else the most that one on
 * its back reaches beyond the edge it lies on. A triangle can be near the exact surface and yet beyond the patch's rim.
 * @param triangles vertex ids, three a triangle
 * @param flat puts in place of the x, y, z at `at` their picture in a plane that keeps the triangles the right way up: x and y
 */
export function foldedBy(
  draft: PitchDraft,
  triangles: readonly number[],
  flat: (corners: Float64Array, at: number) => void,
): number {
  const corners = new Float64Array(9);
  const areas = new Float64Array(triangles.length / 3);
  let sum = 0;
  for (let i = 0; i < areas.length; i++) {
    readCorners(draft, triangles, 3 * i, corners);
    for (let at = 0; at < 9; at += 3) flat(corners, at);
    areas[i] =
      (corners[3] - corners[0]) * (corners[7] - corners[1]) -
      (corners[4] - corners[1]) * (corners[6] - corners[0]);
    sum += areas[i];
  }
  const way = Math.sign(sum);
  let most = 0;
  for (let i = 0; i < areas.length; i++)
    if (areas[i] * way < 0) most = Math.max(most, leastHeight(draft, triangles, 3 * i));
  return most;
}

function leastHeight(draft: PitchDraft, triangles: readonly number[], at: number): number {
  const [a, b, c] = [0, 1, 2].map((k) => placeOf(draft, triangles[at + k]));
  const [u, v] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
  const twiceArea = Math.hypot(
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  );
  const longest = Math.max(Math.hypot(...u), Math.hypot(...v), Math.hypot(...u.map((x, k) => x - v[k])));
  return longest === 0 ? 0 : twiceArea / longest;
}

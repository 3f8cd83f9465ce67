import type { Mesh } from '../../solid/mesh.js';
import { meshBounds } from './volume.js';

/**
 * Rounding leaves corners meant for one line up to this far off it, as a share of the largest coordinate: some
 * 45 times the spacing of doubles, 5e-13 mm in a gear set of 90 mm about the origin.
 */
const ROUNDING = 1e-14;

/**
 * How many triangles have no area: a vertex named twice, or a height over the longest edge within the rounding
 * of coordinates.
 */
export function flatTriangles(mesh: Mesh): number {
  const { positions, triangles } = mesh;
  const { min, max } = meshBounds(mesh);
  const least = ROUNDING * Math.max(...max, ...min.map((value) => -value));
  let flat = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i];
    const b = triangles[i + 1];
    const c = triangles[i + 2];
    if (a === b || b === c || c === a || isFlat(positions, 3 * a, 3 * b, 3 * c, least)) flat++;
  }
  return flat;
}

/** True when the height over the longest edge is at most `least`, mm, or not a number. */
function isFlat(positions: Float64Array, a: number, b: number, c: number, least: number): boolean {
  const ux = positions[b] - positions[a];
  const uy = positions[b + 1] - positions[a + 1];
  const uz = positions[b + 2] - positions[a + 2];
  const vx = positions[c] - positions[a];
  const vy = positions[c + 1] - positions[a + 1];
  const vz = positions[c + 2] - positions[a + 2];
  const area = (uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2;
  const longest = Math.max(
    ux * ux + uy * uy + uz * uz,
    vx * vx + vy * vy + vz * vz,
    (ux - vx) ** 2 + (uy - vy) ** 2 + (uz - vz) ** 2,
  );
  return !(area > least * least * longest);
}

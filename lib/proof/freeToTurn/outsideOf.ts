import type { Mesh } from '../../solid/mesh.js';
import { sameTriangles } from '../mesh/sameTriangles.js';
import { type DistanceTree, triangleTree } from '../mesh/triangleTree.js';
import { windingNumber } from '../mesh/windingNumber.js';
import { partOf } from './scene.js';

/** Rounding of heights, mm. */
const ON_FACE = 1e-6;
/** Corners are asked for this near to the middle of their triangle, so that none lies on a surface. */
const INWARD = 0.999;
/** And this far beneath it, mm. */
const DEPTH = 1e-4;

/**
 * What of a toothed body stands outside the body that its teeth are cut in: whatever is above or below the end faces,
 * and of a changed body whatever was joined to it. What is inside (bores, pits, what is left of a cut tooth) is no nearer
 * to a mate than whole teeth are, because it lies within them.
 * @param mesh as finished
 * @param slab heights of the end faces, mm
 * @param changed the body as swept, and for each triangle of `mesh` whether it lies on a tooth
 */
export function outsideOf(
  mesh: Mesh,
  [from, to]: readonly [number, number],
  changed?: { swept: Mesh; toothed: Uint8Array },
): DistanceTree | null {
  const { positions: p, triangles } = mesh;
  const heights = (t: number) => [0, 1, 2].map((k) => p[3 * triangles[3 * t + k] + 2]);
  const beyond = (t: number) => heights(t).some((z) => z < from - ON_FACE || z > to + ON_FACE);
  const asSwept = changed && sameTriangles(mesh, changed.swept);
  const whole = changed && triangleTree(changed.swept);
  return partOf(mesh, (t) => {
    if (!asSwept || asSwept[t]) return beyond(t);
    return !changed!.toothed[t] && (beyond(t) || !liesWithin(whole!, mesh, t));
  });
}

/** Whether a triangle bounds what was there before, as a wall that was cut or as a surface that was divided anew. */
function liesWithin(tree: DistanceTree, { positions, triangles }: Mesh, t: number): boolean {
  const [a, b, c] = [0, 1, 2].map((corner) =>
    [0, 1, 2].map((k) => positions[3 * triangles[3 * t + corner] + k]),
  );
  const [u, v] = [b, c].map((corner) => corner.map((value, k) => value - a[k]));
  const normal = [0, 1, 2].map((k) => u[(k + 1) % 3] * v[(k + 2) % 3] - u[(k + 2) % 3] * v[(k + 1) % 3]);
  const size = Math.hypot(...normal) || 1;
  const middle = a.map((value, k) => (value + b[k] + c[k]) / 3);
  return [middle, a, b, c].every((point) => {
    const [x, y, z] = point.map(
      (value, k) => middle[k] + INWARD * (value - middle[k]) - (DEPTH * normal[k]) / size,
    );
    return windingNumber(tree, x, y, z) !== 0;
  });
}

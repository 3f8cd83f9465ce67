import { refuse } from '../../refusal.js';
import type { Mesh } from '../../solid/mesh.js';

/** @throws Refusal when indices do not come in threes or one points past the vertices */
export function guardIndices({ positions, triangles }: Mesh): void {
  if (positions.length % 3 !== 0)
    refuse('bad-mesh', 'mesh.positions', positions.length, 'three numbers a vertex');
  if (triangles.length % 3 !== 0)
    refuse('bad-mesh', 'mesh.triangles', triangles.length, 'three indices a triangle');
  const vertices = positions.length / 3;
  for (let i = 0; i < triangles.length; i++)
    if (triangles[i] >= vertices)
      refuse('bad-mesh', `mesh.triangles[${i}]`, triangles[i], `an index below the ${vertices} vertices`);
}

/** @throws Refusal when a position is not a finite number */
export function guardPositions({ positions }: Mesh): void {
  for (let i = 0; i < positions.length; i++)
    if (!Number.isFinite(positions[i]))
      refuse('bad-mesh', `mesh.positions[${i}]`, positions[i], 'a finite number of mm');
}

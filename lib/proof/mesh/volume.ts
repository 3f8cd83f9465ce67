import type { Mesh } from '../../solid/mesh.js';

/** Axis-aligned box, mm. */
export interface Bounds {
  min: [number, number, number];
  max: [number, number, number];
}

/** Box around every vertex that a triangle uses, mm; least Infinity and greatest −Infinity for an empty mesh. */
export function meshBounds({ positions, triangles }: Mesh): Bounds {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < triangles.length; i++) {
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[3 * triangles[i] + axis];
      if (value < min[axis]) min[axis] = value;
      if (value > max[axis]) max[axis] = value;
    }
  }
  return { min, max };
}

/** Area of the surface, mm²; 0 for an empty mesh. */
export function meshArea({ positions, triangles }: Mesh): number {
  let twice = 0;
  for (let i = 0; i < triangles.length; i += 3)
    twice += twiceArea(positions, 3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]);
  return twice / 2;
}

/** Twice the area of a triangle, mm². @param a, b, c where the places of its corners begin */
export function twiceArea(p: Float64Array, a: number, b: number, c: number): number {
  const ux = p[b] - p[a];
  const uy = p[b + 1] - p[a + 1];
  const uz = p[b + 2] - p[a + 2];
  const vx = p[c] - p[a];
  const vy = p[c + 1] - p[a + 1];
  const vz = p[c + 2] - p[a + 2];
  return Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2);
}

/**
 * Volume that a closed mesh encloses, mm³; negative when its triangles face inward. Meaningless for an open mesh.
 * Source: divergence theorem, a sum of tetrahedra with one corner in common.
 */
export function meshVolume(mesh: Mesh): number {
  return tetrahedra(mesh)[0] / 6;
}

/** Centre of volume of a closed mesh, mm; NaN when it encloses no volume. */
export function meshCentroid(mesh: Mesh): [number, number, number] {
  const [volume, x, y, z, ox, oy, oz] = tetrahedra(mesh);
  return [ox + x / (4 * volume), oy + y / (4 * volume), oz + z / (4 * volume)];
}

/**
 * Six times the volume, then 24 times the first moments about x, y, z of the corner that all tetrahedra have in
 * common, then that corner. It is the centre of the mesh's box: far from the mesh, digits would cancel.
 */
function tetrahedra(mesh: Mesh): [number, number, number, number, number, number, number] {
  const { positions, triangles } = mesh;
  const { min, max } = meshBounds(mesh);
  const ox = (min[0] + max[0]) / 2;
  const oy = (min[1] + max[1]) / 2;
  const oz = (min[2] + max[2]) / 2;
  let sum = 0;
  let sumX = 0;
  let sumY = 0;
  let sumZ = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i];
    const b = 3 * triangles[i + 1];
    const c = 3 * triangles[i + 2];
    const ax = positions[a] - ox;
    const ay = positions[a + 1] - oy;
    const az = positions[a + 2] - oz;
    const bx = positions[b] - ox;
    const by = positions[b + 1] - oy;
    const bz = positions[b + 2] - oz;
    const cx = positions[c] - ox;
    const cy = positions[c + 1] - oy;
    const cz = positions[c + 2] - oz;
    const sixfold = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    sum += sixfold;
    sumX += sixfold * (ax + bx + cx);
    sumY += sixfold * (ay + by + cy);
    sumZ += sixfold * (az + bz + cz);
  }
  return [sum, sumX, sumY, sumZ, ox, oy, oz];
}

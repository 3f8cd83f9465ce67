import type { Part } from '../../solid/mesh.js';

/** Every triangle of a picture, one after another, part by part. */
export interface Facets {
  /** Unit outward normal of facet i at 3i; zero for a facet without area. */
  normals: Float32Array;
  /** Index of the part that facet i belongs to. */
  part: Uint16Array;
}

/** Normals of all triangles, and whose they are. */
export function facetsOf(parts: readonly Part[]): Facets {
  const count = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  const facets: Facets = { normals: new Float32Array(3 * count), part: new Uint16Array(count) };
  let at = 0;
  for (let part = 0; part < parts.length; part++) {
    const { positions: p, triangles } = parts[part].mesh;
    for (let i = 0; i < triangles.length; i += 3, at++) {
      writeNormal(p, 3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2], facets.normals, 3 * at);
      facets.part[at] = part;
    }
  }
  return facets;
}

function writeNormal(p: Float64Array, a: number, b: number, c: number, into: Float32Array, at: number): void {
  const ux = p[b] - p[a];
  const uy = p[b + 1] - p[a + 1];
  const uz = p[b + 2] - p[a + 2];
  const vx = p[c] - p[a];
  const vy = p[c + 1] - p[a + 1];
  const vz = p[c + 2] - p[a + 2];
  const x = uy * vz - uz * vy;
  const y = uz * vx - ux * vz;
  const z = ux * vy - uy * vx;
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  into[at] = x / length;
  into[at + 1] = y / length;
  into[at + 2] = z / length;
}

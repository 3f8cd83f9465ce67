import type { Mesh } from '../../solid/mesh.js';

/**
 * One corner of every connected piece of a mesh's surface, mm, in the order in which the pieces first appear.
 * Triangles are connected when they share a vertex index.
 */
export function shellPoints({ positions, triangles }: Mesh): [number, number, number][] {
  const parent = singles(positions.length / 3);
  for (let i = 0; i < triangles.length; i += 3) {
    unite(parent, triangles[i], triangles[i + 1]);
    unite(parent, triangles[i], triangles[i + 2]);
  }
  const points: [number, number, number][] = [];
  const seen = new Uint8Array(parent.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(parent, triangles[i]);
    if (seen[root]) continue;
    seen[root] = 1;
    points.push([positions[3 * root], positions[3 * root + 1], positions[3 * root + 2]]);
  }
  return points;
}

/** `count` groups of one member each, for `unite` and `rootOf`. */
export function singles(count: number): Uint32Array {
  const parent = new Uint32Array(count);
  for (let i = 0; i < count; i++) parent[i] = i;
  return parent;
}

/** Makes one group of the groups of `a` and `b`; the least member is its root. True when they were two. */
export function unite(parent: Uint32Array, a: number, b: number): boolean {
  const rootA = rootOf(parent, a);
  const rootB = rootOf(parent, b);
  if (rootA === rootB) return false;
  if (rootA < rootB) parent[rootB] = rootA;
  else parent[rootA] = rootB;
  return true;
}

/** The least member of the group of `i`; halves the path to it on the way. */
export function rootOf(parent: Uint32Array, i: number): number {
  let at = i;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]];
    at = parent[at];
  }
  return at;
}

import { weld } from '../../solid/geom3/weld.js';
import type { Mesh } from '../../solid/mesh.js';

/**
 * For every triangle of a mesh, 1 when another mesh has the very same one: equal corners to the last bit, facing the
 * same way.
 */
export function sameTriangles(mesh: Mesh, other: Mesh): Uint8Array {
  const all = new Float64Array(other.positions.length + mesh.positions.length);
  all.set(other.positions);
  all.set(mesh.positions, other.positions.length);
  const { indexOf } = weld(all, 0);
  const known = new Set<string>();
  for (let t = 0; t < other.triangles.length; t += 3)
    known.add(keyOf(Array.from(other.triangles.subarray(t, t + 3), (vertex) => indexOf[vertex])));
  const first = other.positions.length / 3;
  return Uint8Array.from({ length: mesh.triangles.length / 3 }, (_, i) =>
    known.has(
      keyOf(Array.from(mesh.triangles.subarray(3 * i, 3 * i + 3), (vertex) => indexOf[first + vertex])),
    )
      ? 1
      : 0,
  );
}

function keyOf([a, b, c]: readonly number[]): string {
  if (a <= b && a <= c) return `${a} ${b} ${c}`;
  return b <= c ? `${b} ${c} ${a}` : `${c} ${a} ${b}`;
}

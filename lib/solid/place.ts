import type { Mesh } from './mesh.js';

/** A mesh raised by a height, mm. The triangles are shared with the original. */
export function raised(mesh: Mesh, height: number): Mesh {
  if (height === 0) return mesh;
  return {
    positions: mesh.positions.map((x, i) => (i % 3 === 2 ? x + height : x)),
    triangles: mesh.triangles,
  };
}

/**
 * A mesh turned about z and moved in the bed's plane. The triangles are shared with the original.
 * @param angle radians, counter-clockwise
 * @param offset x and y, mm
 */
export function placed(mesh: Mesh, angle: number, offset: readonly [number, number]): Mesh {
  const [dx, dy] = offset;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const from = mesh.positions;
  const positions = new Float64Array(from.length);
  for (let i = 0; i < from.length; i += 3) {
    positions[i] = from[i] * cos - from[i + 1] * sin + dx;
    positions[i + 1] = from[i] * sin + from[i + 1] * cos + dy;
    positions[i + 2] = from[i + 2];
  }
  return { positions, triangles: mesh.triangles, copyOf: { body: mesh, angle, offset } };
}

import type { Mesh } from '../../../lib/solid/mesh.js';
import { type Point, turnedOver } from './fixtures.js';

/** Rotation (about x, then y, then z, radians), scale, mirror (x → −x first) and shift. */
export interface Placement {
  turns: Point;
  scale: number;
  mirrored: boolean;
  shift: Point;
}

export function placedPoint([x0, y0, z0]: Point, { turns, scale, mirrored, shift }: Placement): Point {
  let [x, y, z] = [mirrored ? -x0 : x0, y0, z0];
  [y, z] = turned(y, z, turns[0]);
  [z, x] = turned(z, x, turns[1]);
  [x, y] = turned(x, y, turns[2]);
  return [scale * x + shift[0], scale * y + shift[1], scale * z + shift[2]];
}

function turned(u: number, v: number, angle: number): [number, number] {
  return [u * Math.cos(angle) - v * Math.sin(angle), u * Math.sin(angle) + v * Math.cos(angle)];
}

/** The mesh in another place; a mirrored one keeps its outside outside. */
export function placed(mesh: Mesh, placement: Placement): Mesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i += 3)
    positions.set(
      placedPoint([mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]], placement),
      i,
    );
  const moved = { positions, triangles: mesh.triangles };
  return placement.mirrored ? turnedOver(moved) : moved;
}

/** Placements that every fixture is put through. */
export const PLACEMENTS: readonly Placement[] = [
  { turns: [0, 0, 0], scale: 1, mirrored: false, shift: [0, 0, 0] },
  { turns: [0.3, -1.1, 2.4], scale: 1, mirrored: false, shift: [40, -25, 10] },
  { turns: [-2.2, 0.6, 0.9], scale: 1000, mirrored: true, shift: [0, 0, 0] },
  { turns: [1.7, 0.2, -0.4], scale: 0.001, mirrored: true, shift: [0.1, 0.2, -0.3] },
];

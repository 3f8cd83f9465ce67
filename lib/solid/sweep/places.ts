import type { ToothProfile } from '../../tooth/profile.js';

/** Ids from here on mean the vertex `id − NEXT` of the following pitch. */
export const NEXT = 1 << 24;

/** The vertices of one pitch: x, y, z of vertex i at 3i, mm. */
export interface Vertices {
  positions: readonly number[];
  profile: ToothProfile;
}

/** Writes the place of a vertex, one of the following pitch included, to `into` from `at` on, mm. */
export function readPlace(
  { positions, profile }: Vertices,
  id: number,
  into: Float64Array | number[],
  at: number,
): void {
  const own = id >= NEXT ? id - NEXT : id;
  const x = positions[3 * own];
  const y = positions[3 * own + 1];
  into[at + 2] = positions[3 * own + 2];
  if (id === own) {
    into[at] = x;
    into[at + 1] = y;
    return;
  }
  const pitch = (2 * Math.PI) / profile.gear.teeth;
  const cos = Math.cos(pitch);
  const sin = Math.sin(pitch);
  into[at] = x * cos - y * sin;
  into[at + 1] = x * sin + y * cos;
}

/** The same of the three corners of the triangle whose ids begin at `triangles[first]`, nine numbers. */
export function readCorners(
  vertices: Vertices,
  triangles: readonly number[],
  first: number,
  into: Float64Array,
): void {
  readPlace(vertices, triangles[first], into, 0);
  readPlace(vertices, triangles[first + 1], into, 3);
  readPlace(vertices, triangles[first + 2], into, 6);
}

/** Place of a vertex, mm. */
export function placeOf(vertices: Vertices, id: number): [number, number, number] {
  const place: [number, number, number] = [0, 0, 0];
  readPlace(vertices, id, place, 0);
  return place;
}

/** Whether vertices of two divisions of one pitch have the same place, to the last bit. */
export function arePlacedAlike(some: Vertices, a: number, others: Vertices, b: number): boolean {
  if (a >= NEXT !== b >= NEXT) return false;
  const at = 3 * (a >= NEXT ? a - NEXT : a);
  const other = 3 * (b >= NEXT ? b - NEXT : b);
  return (
    some.positions[at] === others.positions[other] &&
    some.positions[at + 1] === others.positions[other + 1] &&
    some.positions[at + 2] === others.positions[other + 2]
  );
}

import type { Mesh } from '../../solid/mesh.js';
import { simplified } from './simplified.js';

type Vector = readonly [number, number, number];
/** A point in a plane: along its u and its v, mm. */
export type PlanePoint = readonly [u: number, v: number];
/** A closed outline; the last point is joined to the first. */
export type Loop = readonly PlanePoint[];

/** A plane by a point of it and two unit directions in it at right angles; it is looked at against u × v. */
export interface Plane {
  origin: Vector;
  u: Vector;
  v: Vector;
}

/** The plane z = height, looked at from above: u is x and v is y. */
export function levelPlane(height: number): Plane {
  return { origin: [0, 0, height], u: [1, 0, 0], v: [0, 1, 0] };
}

/** The plane through the axis z along a direction, radians from +x: u is that direction and v is z. */
export function axialPlane(direction: number): Plane {
  return { origin: [0, 0, 0], u: [Math.cos(direction), Math.sin(direction), 0], v: [0, 0, 1] };
}

/**
 * The cut faces of a closed mesh: outlines counter-clockwise around material, clockwise around holes. A vertex in the
 * plane counts as above it, so that every outline closes whatever the plane meets; a face in the plane is cut where
 * its body goes on below.
 * @param tolerance how far an outline may leave the exact cut of the mesh, mm
 */
export function meshSection({ positions, triangles }: Mesh, plane: Plane, tolerance = 1e-6): Loop[] {
  const { origin, u, v } = plane;
  const normal = cross(u, v);
  const count = positions.length / 3;
  const heights = new Float64Array(count);
  for (let i = 0; i < count; i++)
    heights[i] =
      (positions[3 * i] - origin[0]) * normal[0] +
      (positions[3 * i + 1] - origin[1]) * normal[1] +
      (positions[3 * i + 2] - origin[2]) * normal[2];
  // With material on its left an outline enters a triangle where the rim goes down through the plane, and leaves it
  // where the rim comes up again: there the next triangle's rim goes down.
  const onward = new Map<number, { to: number; point: PlanePoint }>();
  for (let i = 0; i < triangles.length; i += 3) {
    let down = -1;
    let up = -1;
    let lower = 0;
    let upper = 0;
    for (let side = 0; side < 3; side++) {
      const a = triangles[i + side];
      const b = triangles[i + ((side + 1) % 3)];
      if (heights[a] >= 0 === heights[b] >= 0) continue;
      const key = Math.min(a, b) * count + Math.max(a, b);
      if (heights[a] >= 0) [down, lower, upper] = [key, b, a];
      else up = key;
    }
    if (down >= 0) onward.set(down, { to: up, point: crossing(lower, upper) });
  }
  const loops: Loop[] = [];
  while (onward.size > 0) {
    const [first] = onward.keys();
    const loop: PlanePoint[] = [];
    for (let key = first; onward.has(key); ) {
      const { to, point } = onward.get(key)!;
      onward.delete(key);
      loop.push(point);
      key = to;
    }
    const short = simplified(loop, tolerance);
    if (short.length > 2) loops.push(short);
  }
  return loops;

  function crossing(lower: number, upper: number): PlanePoint {
    const share = heights[lower] / (heights[lower] - heights[upper]);
    const at = (axis: number): number =>
      positions[3 * lower + axis] +
      share * (positions[3 * upper + axis] - positions[3 * lower + axis]) -
      origin[axis];
    const x = at(0);
    const y = at(1);
    const z = at(2);
    return [x * u[0] + y * u[1] + z * u[2], x * v[0] + y * v[1] + z * v[2]];
  }
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

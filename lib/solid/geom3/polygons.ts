import type { geometries, maths } from '@jscad/modeling';
import { refuse } from '../../refusal.js';

type Geom3 = geometries.geom3.Geom3;
type Mat4 = maths.mat4.Mat4;

/** The corners of every polygon in a row: polygon i has those from `starts[i]` up to `starts[i + 1]`. */
export interface Corners {
  /** x, y, z, … in mm, the geometry's transform applied. */
  points: Float64Array;
  starts: Uint32Array;
}

/**
 * Reads the polygons out of a geometry without changing it.
 * @throws Refusal when it has no polygons or a coordinate is not finite
 */
export function readPolygons({ polygons, transforms }: Geom3): Corners {
  if (polygons.length === 0) refuse('not-closed', 'geom3.polygons', 0, 'a solid has at least 4 polygons');
  const starts = new Uint32Array(polygons.length + 1);
  polygons.forEach(({ vertices }, i) => {
    starts[i + 1] = starts[i] + vertices.length;
  });
  const points = new Float64Array(3 * starts[polygons.length]);
  const identity = transforms.every((value, i) => value === (i % 5 === 0 ? 1 : 0));
  const mirrors = determinant(transforms) < 0;
  let at = 0;
  for (const { vertices } of polygons) {
    // A mirrored polygon runs the other way round, so that it still faces outward.
    for (const vertex of mirrors ? [...vertices].reverse() : vertices) {
      points.set(identity ? vertex : apply(transforms, vertex), at);
      at += 3;
    }
  }
  const bad = points.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) refuse('bad-mesh', 'geom3.polygons', points[bad], 'every coordinate must be a finite number');
  return { points, starts };
}

/** Column-major 4 × 4, as @jscad keeps it; points are divided by their fourth coordinate. */
function apply(m: Mat4, [x, y, z]: readonly number[]): [number, number, number] {
  const row = (i: number): number => m[i] * x + m[i + 4] * y + m[i + 8] * z + m[i + 12];
  const w = row(3) || 1;
  return [row(0) / w, row(1) / w, row(2) / w];
}

/** Of the upper 3 × 3 part. */
function determinant(m: Mat4): number {
  const minor = (i: number, j: number): number => m[4 + i] * m[8 + j] - m[4 + j] * m[8 + i];
  return m[0] * minor(1, 2) - m[1] * minor(0, 2) + m[2] * minor(0, 1);
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { windingNumber } from '../../../lib/proof/mesh/windingNumber.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { box, type Point, sphere, star, together, turnedOver } from './fixtures.js';
import { fuzz, lumps, placements, uniform } from './fuzz.js';
import { PLACEMENTS, placed, placedPoint } from './placement.js';

/** Winding number as the solid angle of every triangle over 4π (A. van Oosterom, J. Strackee, 1983; from memory). */
function bySolidAngle({ positions, triangles }: Mesh, p: Point): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) =>
      [0, 1, 2].map((axis) => positions[3 * triangles[i + k] + axis] - p[axis]),
    );
    const [la, lb, lc] = [a, b, c].map((v) => Math.hypot(...v));
    const dot = (u: number[], v: number[]) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    const triple =
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
    sum += 2 * Math.atan2(triple, la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb);
  }
  return sum / (4 * Math.PI);
}

describe('windingNumber', () => {
  it('is 1 inside a cube and 0 outside, also where rays run along its faces, edges and diagonals', () => {
    const cube = triangleTree(box([0, 0, 0], [2, 2, 2]));
    for (let x = -1; x <= 3; x++)
      for (let y = -1; y <= 3; y++)
        for (let z = -1; z <= 3; z++) {
          const onBorder =
            [x, y, z].every((v) => v >= 0 && v <= 2) && [x, y, z].some((v) => v === 0 || v === 2);
          if (onBorder) continue;
          expect(windingNumber(cube, x, y, z)).toBe(x === 1 && y === 1 && z === 1 ? 1 : 0);
        }
  });

  it('counts shells: hollows cancel, overlaps add up, inside-out is negative', () => {
    const cube = box([-2, -2, -2], [2, 2, 2]);
    const core = box([-1, -1, -1], [1, 1, 1]);
    expect(windingNumber(triangleTree(together(cube, turnedOver(core))), 0, 0, 0)).toBe(0);
    expect(windingNumber(triangleTree(together(cube, turnedOver(core))), 1.5, 0, 0)).toBe(1);
    expect(windingNumber(triangleTree(together(cube, core)), 0, 0, 0)).toBe(2);
    expect(windingNumber(triangleTree(turnedOver(cube)), 0, 0, 0)).toBe(-1);
  });

  it('looks along corners of a sphere in every direction', () => {
    const ball = triangleTree(sphere(3));
    const { positions } = ball.mesh;
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = positions.subarray(i, i + 3);
      expect(windingNumber(ball, 0.9 * x, 0.9 * y, 0.9 * z)).toBe(1);
      expect(windingNumber(ball, -2, y, z)).toBe(0);
      if (Math.abs(y) + Math.abs(z) < 0.8) expect(windingNumber(ball, 0, y, z)).toBe(1);
    }
  });

  it('tells tooth from tooth space of a twisted star', () => {
    const mesh = star({
      teeth: 9,
      perTooth: 24,
      layers: 8,
      radius: 10,
      depth: 4,
      height: 10,
      bore: 3,
      twist: 0.5,
    });
    for (const placement of PLACEMENTS) {
      const tree = triangleTree(placed(mesh, placement));
      for (let k = 0; k < 18; k++) {
        const turn = 0.25 + (Math.PI * (k + 0.5)) / 9;
        const point = placedPoint([10 * Math.cos(turn), 10 * Math.sin(turn), 2.5], placement);
        expect(windingNumber(tree, ...point)).toBe(k % 2 === 0 ? 1 : 0);
        const bore = placedPoint([2 * Math.cos(turn), 2 * Math.sin(turn), 2.5], placement);
        expect(windingNumber(tree, ...bore)).toBe(0);
      }
    }
  });

  it('agrees with the sum of solid angles', () => {
    const point = fc.tuple(uniform(-1.5, 1.5), uniform(-1.5, 1.5), uniform(-1.5, 1.5));
    let inside = 0;
    fuzz(
      fc.property(lumps, placements(1), point, (mesh, placement, p) => {
        const body = placed(mesh, placement);
        const expected = bySolidAngle(body, p);
        fc.pre(Math.abs(expected - Math.round(expected)) < 1e-6);
        if (Math.round(expected) === 1) inside++;
        expect(windingNumber(triangleTree(body), ...p)).toBe(Math.round(expected) + 0);
      }),
      500,
    );
    expect(inside).toBeGreaterThan(20);
  });
});

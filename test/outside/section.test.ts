import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Part } from '../../lib/solid/mesh.js';
import { gearSizes } from '../../lib/tooth/gear.js';
import { setGears } from '../../lib/train/setGears.js';
import { closestPlace } from '../../lib/write/drawing/closest.js';
import { axialPlane, type Loop, levelPlane, meshSection } from '../../lib/write/drawing/section.js';
import { referenceSet } from '../sets.js';
import { box } from '../write/meshes.js';
import { kernelBody, startKernel } from './kernel.js';

/** Area of outlines, holes taken off, mm². */
function area(loops: readonly Loop[]): number {
  return loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((part, [x, y], i) => {
        const [nx, ny] = loop[(i + 1) % loop.length];
        return part + (x * ny - nx * y) / 2;
      }, 0),
    0,
  );
}

let kernel: ManifoldToplevel;
let parts: Part[];
const spec = referenceSet({ tolerance: 0.02 });
beforeAll(async () => {
  kernel = await startKernel();
  parts = buildSet(spec);
});

describe('a section', () => {
  test.each([0.001, 0.7, 5, 10, 13.37, 19.99])(
    'across, at %d mm, has the area of the kernel’s slice',
    (height) => {
      for (const { name, mesh } of [parts[0], parts[1], parts[6]]) {
        const expected = kernelBody(kernel, mesh).slice(height).area();
        expect(area(meshSection(mesh, levelPlane(height))) / expected, name).toBeCloseTo(1, 5);
      }
    },
  );

  test.each([0, 17, 90, 216])('along the axis, at %d°, has the area of the kernel’s slice', (direction) => {
    const plane = axialPlane((direction * Math.PI) / 180);
    for (const { name, mesh } of parts) {
      // Turned so that the plane's u lies on x, then its normal, −y, up.
      const body = kernelBody(kernel, mesh).rotate([0, 0, -direction]).rotate([-90, 0, 0]);
      const expected = body.slice(0).area();
      const found = area(meshSection(mesh, plane));
      expect(Math.abs(found - expected), name).toBeLessThan(1e-4 * expected + 1e-3);
    }
  });

  test('closes where the plane meets vertices and faces: such a vertex counts as above', () => {
    const mesh = box([0, 0, 0], [4, 3, 2]);
    expect(area(meshSection(mesh, levelPlane(2)))).toBeCloseTo(12, 9);
    expect(meshSection(mesh, levelPlane(0))).toEqual([]);
    expect(area(meshSection(mesh, axialPlane(Math.atan2(3, 4))))).toBeCloseTo(2 * 5, 9);
    expect(meshSection(box([1, 1, 0], [2, 2, 1]), levelPlane(5))).toEqual([]);
  });

  test('along a simplified outline stays as near as asked', () => {
    const exact = area(meshSection(parts[6].mesh, levelPlane(6)));
    const coarse = meshSection(parts[6].mesh, levelPlane(6), 0.05);
    const corners = (loops: readonly Loop[]) => loops.reduce((sum, { length }) => sum + length, 0);
    expect(corners(coarse)).toBeLessThan(0.7 * corners(meshSection(parts[6].mesh, levelPlane(6))));
    expect(Math.abs(area(coarse) / exact - 1)).toBeLessThan(0.01);
  });
});

describe('the narrowest place of a mesh', () => {
  test('is the gap asked for, over cos β_b', () => {
    const [sun, planet] = [parts[0], parts[1]].map(({ mesh }) => meshSection(mesh, levelPlane(6)));
    const { baseHelixAngle, referenceRadius } = gearSizes(setGears(spec).planet);
    const found = closestPlace(sun, planet, [referenceRadius, 0])!;
    // sin β_b = sin β cos α_n (ISO 21771).
    const expected = 0.25 / Math.cos(Math.asin(Math.sin(Math.PI / 6) * Math.cos(Math.PI / 9)));
    expect(Math.cos(baseHelixAngle)).toBeCloseTo(0.25 / expected, 9);
    expect(Math.abs(found.distance - expected)).toBeLessThan(2 * spec.tolerance);
    expect(Math.hypot(found.one[0] - found.other[0], found.one[1] - found.other[1])).toBeCloseTo(
      found.distance,
      9,
    );
  });

  test('of two squares is between their facing sides, nearest to where it is wanted', () => {
    const square = (x: number, y: number): Loop => [
      [x, y],
      [x + 2, y],
      [x + 2, y + 2],
      [x, y + 2],
    ];
    const found = closestPlace([square(0, 0)], [square(2.5, 0)], [2, 1.9])!;
    expect(found.distance).toBeCloseTo(0.5, 12);
    expect(found.one).toEqual([2, 2]);
    expect(closestPlace([], [square(0, 0)], [0, 0])).toBeNull();
  });
});

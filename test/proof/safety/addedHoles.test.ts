import { booleans, primitives } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { isWorse } from '../../../lib/proof/checks/fingerGaps.js';
import { rimOutside } from '../../../lib/proof/mesh/rimOutside.js';
import { isInside, sectionAt } from '../../../lib/proof/mesh/section.js';
import { addedHoles } from '../../../lib/proof/safety/addedHoles.js';
import { largestCircle } from '../../../lib/proof/safety/largestCircle.js';
import { fromGeom3, type Geom3 } from '../../../lib/solid/geom3.js';
import { signedArea } from '../../../lib/stack/contour.js';

type Triple = [number, number, number];
const box = (size: Triple, center: Triple) => primitives.cuboid({ size, center });
const column = (radius: number, height: number, center: Triple) =>
  primitives.cylinder({ radius, height, center, segments: 96 });
const block = box([40, 40, 6], [0, 0, 3]);
const without = (...cut: Geom3[]) => fromGeom3(booleans.subtract(block, ...cut) as Geom3);
const holes = (...cut: Geom3[]) => {
  const mesh = without(...cut);
  return addedHoles('block', mesh, new Uint8Array(mesh.triangles.length / 3), isWorse);
};

describe('sections', () => {
  test('have the area of the solid, holes taken off', () => {
    const mesh = without(box([4, 5, 99], [0, 0, 0]), box([3, 3, 4], [12, 0, 6]));
    const area = (z: number) => sectionAt(mesh, z).reduce((sum, { points }) => sum + signedArea(points), 0);
    expect(area(1)).toBeCloseTo(1600 - 20, 9);
    expect(area(5)).toBeCloseTo(1600 - 20 - 9, 9);
    expect(sectionAt(mesh, 5)).toHaveLength(3);
    expect(sectionAt(mesh, 7)).toEqual([]);
    expect(isInside(sectionAt(mesh, 5)[0].points, 0, 12)).toBe(true);
  });
});

describe('the largest circle', () => {
  test('touches the sides of a polygon and keeps out of what stands in it', () => {
    const side = [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ] as [number, number][];
    expect(largestCircle(side, [], 0.5)!.radius).toBeCloseTo(3, 1);
    // Incircle of a triangle 3, 4, 5: radius 1.
    expect(
      largestCircle(
        [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
        [],
        0.1,
      )!.radius,
    ).toBeCloseTo(1, 1);
    const post = side.map(([x, y]): [number, number] => [3 + 0.4 * x, 2 + y / 3]);
    expect(largestCircle(side, [post], 0.5)!.radius).toBeLessThan(1.9);
    expect(largestCircle(side, [], 3.1)).toBeNull();
  });
});

describe('holes that a script made', () => {
  test('are measured by the rod that enters them', () => {
    const [round] = holes(column(4, 99, [8, -7, 0]));
    expect(round.where).toBe('a hole of block at 8.0, -7.0');
    expect(Math.abs(round.diameter - 8)).toBeLessThan(0.1);
    const [slot] = holes(box([20, 6, 99], [0, 0, 0]));
    expect(Math.abs(slot.diameter - 6)).toBeLessThan(0.1);
  });

  test('count with their worst width, and not where they are too narrow or open to a side', () => {
    const [stepped] = holes(column(3, 99, [0, 0, 0]), column(8, 4, [0, 0, 6]));
    expect(Math.abs(stepped.diameter - 6)).toBeLessThan(0.1);
    expect(holes(column(0.4, 99, [0, 0, 0]))).toEqual([]);
    expect(holes(box([8, 30, 99], [0, 20, 0]))).toEqual([]);
  });

  test('are none that were there before', () => {
    const mesh = without(column(4, 99, [0, 0, 0]));
    expect(addedHoles('block', mesh, new Uint8Array(mesh.triangles.length / 3).fill(1), isWorse)).toEqual([]);
  });
});

describe('the rim that is left', () => {
  test('is the least distance of a new wall from the root circle', () => {
    const place = { centre: [0, 0] as const, rootRadius: 10, from: 0, to: 6 };
    const left = (...cut: Geom3[]) => {
      const mesh = without(...cut);
      return rimOutside(mesh, new Uint8Array(mesh.triangles.length / 3), place);
    };
    expect(left(box([5, 5, 99], [16, 0, 0]))).toBeCloseTo(3.5, 9);
    expect(left(box([5, 5, 2], [16, 0, 6]))).toBeCloseTo(3.5, 9);
    // The block's own sides are the nearest where a pit within the root circle is no rim.
    expect(left(column(4, 99, [0, 0, 0]))).toBeCloseTo(10, 9);
    const whole = without(box([5, 5, 99], [16, 0, 0]));
    expect(rimOutside(whole, new Uint8Array(whole.triangles.length / 3).fill(1), place)).toBe(Infinity);
    // What stands on an end face is no cut.
    const standing = fromGeom3(booleans.union(block, column(12, 9, [0, 0, 8])) as Geom3);
    const fresh = Uint8Array.from({ length: standing.triangles.length / 3 }, (_, t) =>
      [0, 1, 2].some((k) => standing.positions[3 * standing.triangles[3 * t + k] + 2] < 6 - 1e-6) ? 1 : 0,
    );
    expect(rimOutside(standing, fresh, place)).toBe(Infinity);
  });
});

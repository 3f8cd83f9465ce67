import { booleans, primitives, transforms } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { isCarried, startsAbove } from '../../../lib/proof/printing/starts.js';
import { fromGeom3, type Geom3 } from '../../../lib/solid/geom3.js';
import type { Part } from '../../../lib/solid/mesh.js';

/** Against plain solids whose lowest places are known. */
type Triple = [number, number, number];
const box = (size: Triple, center: Triple) => primitives.cuboid({ size, center });
const at = (solid: Geom3, place: Triple) => transforms.translate(place, solid) as Geom3;
const starts = (solid: Geom3, above = 0.1) => startsAbove(fromGeom3(solid), above);
const cone = (low: number, high: number) =>
  primitives.cylinderElliptic({
    height: 4,
    startRadius: [low, low],
    endRadius: [high, high],
    center: [0, 0, 4],
    segments: 24,
  });

describe('places where a body begins', () => {
  test('are the lowest ones of its surface that look down: a face, an edge, a point', () => {
    expect(starts(box([3, 4, 5], [0, 0, 3.5]))).toMatchObject([{ at: [0, 0, 1] }]);
    const onEdge = at(transforms.rotate([Math.PI / 4, 0, 0], box([3, 4, 4], [0, 0, 0])) as Geom3, [0, 0, 9]);
    expect(starts(onEdge)).toHaveLength(1);
    expect(starts(onEdge)[0].at[2]).toBeCloseTo(9 - Math.SQRT2 * 2, 9);
    expect(starts(cone(1e-3, 2))).toHaveLength(1);
    expect(starts(primitives.sphere({ radius: 2, center: [0, 0, 5] }))[0].at[2]).toBeCloseTo(3, 9);
  });

  test('are none on the bed', () => {
    expect(starts(box([3, 4, 5], [0, 0, 2.5]))).toEqual([]);
    expect(starts(box([3, 4, 5], [0, 0, 2.59]))).toEqual([]);
    expect(starts(box([3, 4, 5], [0, 0, 2.61]))).toHaveLength(1);
  });

  test('are none where the body ends: bottoms of pits', () => {
    const block = box([9, 9, 6], [0, 0, 3]);
    expect(starts(booleans.subtract(block, cone(1e-3, 2)) as Geom3)).toEqual([]);
    expect(starts(booleans.subtract(block, box([2, 2, 9], [0, 0, 6])) as Geom3)).toEqual([]);
  });

  test('are none under a roof that something lower carries, and one for each leg that hangs', () => {
    const slab = box([20, 4, 2], [0, 0, 9]);
    const leg = (x: number, from: number) => box([2, 2, 9 - from], [x, 0, from + (9 - from) / 2]);
    expect(starts(booleans.union(slab, leg(-8, 0), leg(8, 0)) as Geom3)).toEqual([]);
    const three = booleans.union(slab, leg(-8, 0), leg(0, 3), leg(8, 5)) as Geom3;
    expect(
      starts(three)
        .map((start) => start.at[2])
        .sort(),
    ).toEqual([3, 5]);
  });
});

describe('a start is carried', () => {
  const layers = { layer: 0.2, layers: 2 };
  const part = (solid: Geom3): Part => ({ name: 'part', mesh: fromGeom3(solid) });
  const carried = (solid: Geom3, ...others: Geom3[]) => {
    const mesh = fromGeom3(solid);
    return isCarried(mesh, startsAbove(mesh, 0.1)[0], [solid, ...others].map(part), layers);
  };

  test('by what lies no more layers below it, not by what lies deeper or beside it', () => {
    const over = (gap: number) => box([3, 3, 2], [0, 0, 2 + gap]);
    const plate = box([3, 3, 1], [0, 0, 0.5]);
    expect(carried(over(0.2), plate)).toBe(true);
    expect(carried(over(0.4), plate)).toBe(true);
    expect(carried(over(0.6), plate)).toBe(false);
    expect(carried(over(0.4), at(plate, [3.1, 0, 0]))).toBe(false);
    expect(carried(over(0.4), at(plate, [2, 2, 0]))).toBe(true);
    expect(carried(over(0.4))).toBe(false);
    // Under the middle alone, and under one corner alone.
    expect(carried(over(0.4), box([0.8, 0.8, 1], [0.2, 0.1, 0.5]))).toBe(true);
    expect(carried(over(0.4), box([0.8, 0.8, 1], [1.5, 1.5, 0.5]))).toBe(true);
  });

  test('the same for points', () => {
    const tip = at(cone(1e-3, 2), [0, 0, -0.7]);
    const plate = box([3, 3, 1], [0, 0, 0.5]);
    expect(carried(tip, plate)).toBe(true);
    expect(carried(at(tip, [0, 0, 0.2]), plate)).toBe(false);
    expect(carried(tip, at(plate, [1.6, 0, 0]))).toBe(false);
  });
});

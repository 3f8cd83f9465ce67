import { describe, expect, it } from 'vitest';
import { foldedBy } from '../../../lib/solid/sweep/folded.js';
import { DENSE, FEW } from '../../../lib/solid/sweep/samples.js';

describe('triangles of a patch that lie on their backs', () => {
  const picture = (corners: Float64Array, at: number) => {
    // Seen from above: x and y as they are.
    corners[at] += 0;
  };
  const drafted = (points: number[][], triangles: number[]) =>
    foldedBy({ positions: points.flat() } as never, triangles, picture);
  // Two large ones to the left, then one beyond the rim whose least height is known whichever way it stands in space.
  const flat = [
    [0, 0, 0],
    [10, 0, 0],
    [10, 10, 0],
    [0, 10, 0],
  ];

  it('stand out by their least height, 3 · 4 / 5 in the right-angled one', () => {
    expect(drafted(flat, [0, 1, 2, 0, 2, 3])).toBe(0);
    expect(drafted(flat, [0, 2, 1, 0, 3, 2])).toBe(0);
    for (const order of [
      [4, 5, 6],
      [5, 6, 4],
      [6, 4, 5],
    ]) {
      const level = [...flat, [0, 0, 0], [0, 4, 0], [3, 0, 0]];
      expect(drafted(level, [0, 1, 2, 0, 2, 3, ...order])).toBeCloseTo(2.4, 12);
      // The same triangle leaning, by rotation about y and then about x: heights are those in space.
      const leaning = [0, 1].map((axis) => {
        const [cos, sin] = [Math.cos(0.6), Math.sin(0.6)];
        return [
          ...flat,
          ...level.slice(4).map(([x, y]) => (axis ? [x * cos, y, 1 + x * sin] : [x, y * cos, 1 + y * sin])),
        ];
      });
      for (const points of leaning)
        expect(drafted(points, [0, 1, 2, 0, 2, 3, ...order])).toBeCloseTo(2.4, 12);
      const [cos, sin] = [Math.cos(0.5), Math.sin(0.5)];
      const both = [
        ...flat,
        ...leaning[1].slice(4).map(([x, y, z]) => [x, y * cos - z * sin, y * sin + z * cos]),
      ];
      expect(drafted(both, [0, 1, 2, 0, 2, 3, ...order])).toBeCloseTo(2.4, 12);
    }
    // One of no height at all stands out by nothing.
    expect(drafted([...flat, [2, 2, 0], [2, 2, 0], [2, 2, 0]], [0, 1, 2, 0, 2, 3, 4, 5, 6])).toBe(0);
  });
});

describe('places in a triangle at which it is measured', () => {
  it.each([
    ['many', DENSE, 7],
    ['few', FEW, 4],
  ])('%s: evenly, without its corners, those of the last edge first', (_, { shares, onLastEdge }, order) => {
    const points = Array.from({ length: shares.length / 3 }, (_, i) => [
      ...shares.subarray(3 * i, 3 * i + 3),
    ]);
    expect(points).toHaveLength(((order + 1) * (order + 2)) / 2 - 3);
    expect(onLastEdge).toBe(order - 1);
    for (const [i, [a, b, c]] of points.entries()) {
      expect(a + b + c).toBeCloseTo(1, 12);
      expect(Math.max(a, b, c)).toBeLessThan(1);
      expect(b === 0).toBe(i < onLastEdge);
    }
  });
});

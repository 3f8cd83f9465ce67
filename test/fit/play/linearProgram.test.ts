import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { maximise } from '../../../lib/fit/play/linearProgram.js';
import { evenly } from '../../evenly.js';

describe('maximise', () => {
  it('finds the corner of a textbook program', () => {
    // Wyndor Glass: max 3x + 5y, x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18, x, y ≥ 0; answer 36 at (2, 6).
    // F. S. Hillier, G. J. Lieberman, Introduction to Operations Research, section 3.1 (from memory).
    const found = maximise([3, 5], [1, 0, 0, 2, 3, 2, -1, 0, 0, -1], [4, 12, 18, 0, 0]);
    expect(found.value).toBeCloseTo(36, 12);
    expect([...found.point]).toEqual([2, 6]);
    expect(found.heldBy).toEqual([1, 2]);
  });

  it('goes both ways along a free variable', () => {
    expect(maximise([-1], [1, -1], [2, 3])).toMatchObject({ value: 3, heldBy: [1] });
    expect(maximise([1], [1, -1], [2, 3])).toMatchObject({ value: 2, heldBy: [0] });
  });

  it('says when nothing bounds', () => {
    expect(maximise([1, 1], [1, 0], [5]).value).toBe(Number.POSITIVE_INFINITY);
    expect(maximise([1], [], []).value).toBe(Number.POSITIVE_INFINITY);
    expect(maximise([1, 0], [1, 0], [5]).value).toBe(5);
  });

  it('ends on a program that makes the plain rule cycle', () => {
    // E. M. L. Beale (1955): max 3/4 a − 150 b + 1/50 c − 6 d; optimum 1/20. From memory, checked by its dual.
    const rows = [
      ...[1 / 4, -60, -1 / 25, 9],
      ...[1 / 2, -90, -1 / 50, 3],
      ...[0, 0, 1, 0],
      ...[-1, 0, 0, 0],
      ...[0, -1, 0, 0],
      ...[0, 0, -1, 0],
      ...[0, 0, 0, -1],
    ];
    expect(maximise([3 / 4, -150, 1 / 50, -6], rows, [0, 0, 1, 0, 0, 0, 0]).value).toBeCloseTo(1 / 20, 12);
  });

  it('is bounded from above by weak duality and is allowed, on random programs', () => {
    // In thousandths: what is a billion times smaller than the rest counts as rounding, by design.
    const entry = fc.integer({ min: -1000, max: 1000 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(
        fc.array(entry, { minLength: 3, maxLength: 3 }),
        fc.array(fc.tuple(entry, entry, entry, evenly(0, 2)), {
          maxLength: 25,
        }),
        (objective, constraints) => {
          // A box keeps the answer finite.
          const box = [0, 1, 2].flatMap((k) =>
            [1, -1].map((sign) => ({ row: [0, 1, 2].map((j) => (j === k ? sign : 0)), bound: 3 })),
          );
          const all = [...constraints.map(([a, b, c, bound]) => ({ row: [a, b, c], bound })), ...box];
          const { value, point } = maximise(
            objective,
            all.flatMap(({ row }) => row),
            all.map(({ bound }) => bound),
          );
          const dot = (a: readonly number[], b: ArrayLike<number>) =>
            a.reduce((sum, entry, i) => sum + entry * b[i], 0);
          expect(dot(objective, point)).toBeCloseTo(value, 7);
          for (const { row, bound } of all) expect(dot(row, point)).toBeLessThanOrEqual(bound + 1e-6);
          expect(value).toBeCloseTo(bruteForce(objective, all), 6);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** The best of all corners of a polytope in space: three planes at a time. */
function bruteForce(objective: readonly number[], all: { row: number[]; bound: number }[]): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++)
      for (let k = j + 1; k < all.length; k++) {
        const [a, b, c] = [all[i], all[j], all[k]];
        const det = determinant(a.row, b.row, c.row);
        if (Math.abs(det) < 1e-9) continue;
        const bounds = [a.bound, b.bound, c.bound];
        const point = [0, 1, 2].map((column) => {
          const replaced = [a, b, c].map(({ row }, r) => row.map((x, q) => (q === column ? bounds[r] : x)));
          return determinant(replaced[0], replaced[1], replaced[2]) / det;
        });
        const inside = all.every(
          ({ row, bound }) => row.reduce((s, x, q) => s + x * point[q], 0) <= bound + 1e-7,
        );
        if (inside)
          best = Math.max(
            best,
            objective.reduce((s, x, q) => s + x * point[q], 0),
          );
      }
  return best;
}

function determinant(a: number[], b: number[], c: number[]): number {
  return (
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  );
}

import { describe, expect, it } from 'vitest';
import { cholesky, solveLower, solveUpper } from '../../../lib/fit/trials/cholesky.js';
import { posteriorMode } from '../../../lib/fit/trials/mode.js';
import { normalPoints } from '../../../lib/fit/trials/normalPoints.js';
import type { Observation } from '../../../lib/fit/trials/ordinalModel.js';
import { posteriorOf } from '../../../lib/fit/trials/posterior.js';
import { priorOf } from '../../../lib/fit/trials/priors.js';
import { profileAdvice } from '../../../lib/fit/trials/profileAdvice.js';

describe('the triangle of a matrix', () => {
  // Textbook: 4 12 −16, 12 37 −43, −16 −43 98 is L Lᵀ of 2; 6 1; −8 5 3.
  const matrix = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);

  it('is the textbook one', () => {
    expect([...cholesky(matrix, 3)!]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
  });

  it('solves with itself and with its transpose', () => {
    const lower = cholesky(matrix, 3)!;
    const x = solveUpper(lower, solveLower(lower, [1, 2, 3]));
    for (let i = 0; i < 3; i++)
      expect([0, 1, 2].reduce((sum, j) => sum + matrix[3 * i + j] * x[j], 0)).toBeCloseTo(i + 1, 9);
  });

  it.each([
    ['none', [1, 1, 1, 1]],
    ['a negative one', [1, 2, 2, 1]],
  ])('does not exist where there is %s left', (_, numbers) => {
    expect(cholesky(Float64Array.from(numbers), 2)).toBeUndefined();
  });
});

describe('points for normal numbers', () => {
  it.each([1, 2, 5])('have the moments of %d independent ones', (size) => {
    const count = 4096;
    const points = normalPoints(count, size);
    const mean = (of: (point: Float64Array) => number) =>
      Array.from({ length: count }, (_, i) => of(points.subarray(size * i, size * (i + 1)))).reduce(
        (a, b) => a + b,
      ) / count;
    for (let d = 0; d < size; d++) {
      expect(mean((p) => p[d])).toBeCloseTo(0, 1);
      expect(mean((p) => p[d] ** 2)).toBeCloseTo(1, 1);
      expect(Math.abs(mean((p) => p[d] ** 4) - 3)).toBeLessThan(0.3);
      for (let e = 0; e < d; e++) expect(mean((p) => p[d] * p[e])).toBeCloseTo(0, 1);
    }
  });
});

describe('a model from trials', () => {
  const own = (x: number, level: number, shifts: number[] = []): Observation => ({ x, level, shifts });

  it('is said not to be determined where no trial tells two conditions apart', () => {
    const off = Number.POSITIVE_INFINITY;
    const observations = [own(0.1, 0), own(0.2, 1), own(0.3, 0), own(0.4, 1)];
    const prior = { mean: [0.25, Math.log(0.1), 0], sd: [off, off, off] };
    expect(() => posteriorMode({ levels: 2, shifts: 1, observations }, prior)).toThrow(
      'the trials do not determine the model',
    );
    const told = [...observations, own(0.2, 0, [0]), own(0.25, 1, [0]), own(0.3, 0, [0])];
    expect(posteriorMode({ levels: 2, shifts: 1, observations: told }, prior).lower).toHaveLength(9);
  });

  it('is worth five hundred draws also where the first nodes are worth fewer', () => {
    const shifts = [
      'printer',
      'printer',
      'printer',
      'filament',
      'filament',
      'filament',
      'dryness',
      'dryness',
    ] as const;
    const observations = Array.from({ length: 16 }, (_, i) =>
      own(0.1 + 0.05 * (i % 8), (i * 7) % 4, i % 2 ? [i % 8] : [i % 8, (i + 3) % 8]),
    );
    const { worth, weights } = posteriorOf({ levels: 4, shifts: 8, observations }, priorOf(shifts));
    expect(worth).toBeGreaterThan(500);
    expect(weights.length).toBeGreaterThan(2048);
  });
});

describe('what is known', () => {
  const figure = (known: boolean) => ({ mean: 0.04, sd: 0.01, least: 0.03, most: 0.05, known });
  const growth = (own: boolean, shrunk: boolean) => ({
    growth: figure(own),
    firstLayerGrowth: figure(false),
    shrinkage: figure(shrunk),
    misfits: [],
  });

  it('goes to a profile, whatever else is not', () => {
    const told = (...known: [boolean, boolean]) =>
      profileAdvice({ printer: ' FINE', filament: 'petg', dryness: 'dry' }, undefined, 0, growth(...known));
    expect(told(false, false)).toEqual({});
    expect(told(true, false)).toEqual({
      printer: { profile: 'fine', growth: 0.04 },
      filament: { material: 'PETG' },
    });
    expect(told(false, true)).toEqual({
      printer: { profile: 'fine' },
      filament: { material: 'PETG', shrinkage: 0.04 },
    });
  });
});

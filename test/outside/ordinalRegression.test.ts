import { describe, expect, it } from 'vitest';
import { solveLower, solveUpper } from '../../lib/fit/trials/cholesky.js';
import { type Mode, posteriorMode } from '../../lib/fit/trials/mode.js';
import { boundariesOf, type Observation, widthOf } from '../../lib/fit/trials/ordinalModel.js';

const off = Number.POSITIVE_INFINITY;

/** Standard deviation of a sum of parameters' errors, each times its slope. */
function standardError({ lower }: Mode, slopes: readonly number[]): number {
  const covariance = solveUpper(lower, solveLower(lower, slopes));
  return Math.sqrt(slopes.reduce((sum, slope, i) => sum + slope * covariance[i], 0));
}

/** Binary regression with the prior switched off, as intercept and slope with their standard errors. */
function binary(observations: Observation[], boundary: number, width: number) {
  const data = { levels: 2, shifts: 0, observations };
  const mode = posteriorMode(data, { mean: [boundary, Math.log(width)], sd: [off, off] });
  const [b] = boundariesOf(mode.parameters, 2);
  const w = widthOf(mode.parameters, 2);
  return {
    intercept: -b / w,
    slope: 1 / w,
    interceptError: standardError(mode, [-1 / w, b / w]),
    slopeError: standardError(mode, [0, -1 / w]),
  };
}

describe('ordinal regression with the prior switched off', () => {
  it('is that of the 23 shuttle flights before the Challenger', () => {
    // Dalal, Fowlkes, Hoadley, J. Am. Stat. Assoc. 84 (1989) 945: flights with distressed O-rings by joint
    // temperature in °F; data and the figures of common statistics packages from memory.
    const distressed = [70, 57, 63, 70, 53, 75, 58];
    const sound = [66, 69, 68, 67, 72, 73, 70, 78, 67, 67, 75, 70, 81, 76, 79, 76];
    const flights = [
      ...distressed.map((t) => ({ x: -t, level: 1, shifts: [] })),
      ...sound.map((t) => ({ x: -t, level: 0, shifts: [] })),
    ];
    const found = binary(flights, -65, 5);
    expect(found.intercept).toBeCloseTo(15.0429, 3);
    expect(found.slope).toBeCloseTo(0.2322, 4);
    expect(found.interceptError).toBeCloseTo(7.3786, 2);
    expect(found.slopeError).toBeCloseTo(0.1082, 3);
  });

  it("is that of Bliss's beetles", () => {
    // Bliss (1935) in Dobson, An Introduction to Generalized Linear Models: logarithm of the dose, beetles, killed;
    // intercept −60.72 (5.18), slope 34.27 (2.91). From memory.
    const doses = [1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839];
    const beetles = [59, 60, 62, 56, 63, 59, 62, 60];
    const killed = [6, 13, 18, 28, 52, 53, 61, 60];
    const all = doses.flatMap((x, i) =>
      Array.from({ length: beetles[i] }, (_, j) => ({ x, level: j < killed[i] ? 1 : 0, shifts: [] })),
    );
    const found = binary(all, 1.75, 0.03);
    expect(found.intercept).toBeCloseTo(-60.717, 2);
    expect(found.slope).toBeCloseTo(34.27, 2);
    expect(found.interceptError).toBeCloseTo(5.181, 2);
    expect(found.slopeError).toBeCloseTo(2.912, 2);
  });

  it('is that of the tasting of four cheeses, in nine levels with shifts', () => {
    // McCullagh and Nelder, Generalized Linear Models (1989), 5.6: how many of 52 tasters gave each cheese each of
    // nine marks; the figures are those that statistics packages print for it. Both from memory.
    const tasted = [
      [0, 0, 1, 7, 8, 8, 19, 8, 1],
      [6, 9, 12, 11, 7, 6, 1, 0, 0],
      [1, 1, 6, 8, 23, 7, 5, 1, 0],
      [0, 0, 0, 1, 3, 7, 14, 16, 11],
    ];
    const observations = tasted.flatMap((counts, cheese) =>
      counts.flatMap((count, level) =>
        Array.from({ length: count }, () => ({ x: 0, level, shifts: cheese < 3 ? [cheese] : [] })),
      ),
    );
    // All cheeses have one x, so the width is free; a narrow prior holds it alone at 1.
    const mean = [-5, ...Array(7).fill(0), 0, 0, 0, 0];
    const sd = [...Array(8).fill(off), 0.001, off, off, off];
    const mode = posteriorMode({ levels: 9, shifts: 3, observations }, { mean, sd });
    expect(widthOf(mode.parameters, 9)).toBeCloseTo(1, 6);
    const published = [-7.0801, -6.0249, -4.9254, -3.8568, -2.5205, -1.5685, -0.0669, 1.493];
    for (const [i, boundary] of boundariesOf(mode.parameters, 9).entries())
      expect(boundary).toBeCloseTo(published[i], 3);
    for (const [i, shift] of [1.6128, 4.9645, 3.3227].entries())
      expect(mode.parameters[9 + i]).toBeCloseTo(shift, 3);
    for (const [i, error] of [0.3778, 0.4741, 0.4251].entries())
      expect(
        standardError(
          mode,
          mean.map((_, j) => (j === 9 + i ? 1 : 0)),
        ),
      ).toBeCloseTo(error, 2);
  });
});

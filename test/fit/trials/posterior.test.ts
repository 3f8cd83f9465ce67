import { describe, expect, it } from 'vitest';
import { candidateGaps, gapAdvice, middles } from '../../../lib/fit/trials/gapAdvice.js';
import { nextGaps } from '../../../lib/fit/trials/nextGaps.js';
import { logLikelihood, type Observation, type OrdinalData } from '../../../lib/fit/trials/ordinalModel.js';
import { posteriorOf } from '../../../lib/fit/trials/posterior.js';
import { priorOf } from '../../../lib/fit/trials/priors.js';
import { spreadOf } from '../../../lib/fit/trials/spread.js';
import { random } from './simulate.js';

const own = (x: number, level: number): Observation => ({ x, level, shifts: [] });
const dataOf = (observations: Observation[], shifts = 0): OrdinalData => ({
  levels: 4,
  shifts,
  observations,
});

/** Means over a grid of every parameter, with the likelihood as a textbook writes it. */
function byGrid(observations: Observation[], gap: number) {
  const { mean, sd } = priorOf([]);
  const steps = 25;
  const axis = (i: number) =>
    Array.from({ length: steps }, (_, k) => mean[i] + sd[i] * (k * (8 / (steps - 1)) - 4));
  const f = (u: number) => 1 / (1 + Math.exp(-u));
  let [sum, middle, square, free] = [0, 0, 0, 0];
  for (const b1 of axis(0))
    for (const d1 of axis(1))
      for (const d2 of axis(2))
        for (const w of axis(3)) {
          const b = [b1, b1 + Math.exp(d1), b1 + Math.exp(d1) + Math.exp(d2)];
          const width = Math.exp(w);
          const above = (x: number, k: number) => (k < 0 ? 1 : k > 2 ? 0 : f((x - b[k]) / width));
          let weight = [b1, d1, d2, w].reduce(
            (p, at, i) => p * Math.exp(-(((at - mean[i]) / sd[i]) ** 2) / 2),
            1,
          );
          for (const { x, level } of observations) weight *= above(x, level - 1) - above(x, level);
          const m = (b[1] + b[2]) / 2;
          sum += weight;
          middle += weight * m;
          square += weight * m * m;
          free += weight * (above(gap, 1) - above(gap, 2));
        }
  const mid = middle / sum;
  return { middle: mid, sd: Math.sqrt(square / sum - mid * mid), free: free / sum };
}

describe('the posterior of the gap', () => {
  it.each<[string, Observation[]]>([
    ['no trial', []],
    ['three that agree', [own(0.2, 1), own(0.3, 2), own(0.4, 3)]],
    ['all fused', [own(0.2, 0), own(0.25, 0), own(0.3, 0)]],
    ['all loose', [own(0.2, 3), own(0.25, 3), own(0.3, 3)]],
    ['some that contradict', [own(0.2, 3), own(0.3, 1), own(0.35, 2), own(0.25, 0)]],
  ])('agrees with a sum over a grid: %s', (_, observations) => {
    const posterior = posteriorOf(dataOf(observations), priorOf([]));
    const middle = spreadOf(middles(posterior), posterior.weights);
    const candidates = candidateGaps(posterior, 0);
    const { gap, chances } = gapAdvice(posterior, 0, candidates);
    const grid = byGrid(observations, gap);
    expect(Math.abs(middle.mean - grid.middle)).toBeLessThan(0.06 * grid.sd);
    expect(middle.sd / grid.sd).toBeCloseTo(1, 1);
    expect(Math.abs(chances.free - grid.free)).toBeLessThan(0.015);
  });

  it('keeps nodes that are worth many draws, even far from what was believed and with many shifts', () => {
    const far = [0.6, 0.7, 0.8, 0.9, 1, 1.2].map((x, i) => own(x, [0, 0, 1, 2, 2, 3][i]));
    const next = random(5);
    const mixed = Array.from({ length: 40 }, (_, i) => ({
      x: 0.1 + 0.4 * next(),
      level: Math.floor(4 * next()),
      shifts: i % 7 < 6 ? [i % 7] : [],
    }));
    const shifts = ['printer', 'printer', 'filament', 'filament', 'dryness', 'dryness'] as const;
    expect(posteriorOf(dataOf(far), priorOf([])).worth).toBeGreaterThan(500);
    expect(posteriorOf(dataOf(mixed, 6), priorOf(shifts)).worth).toBeGreaterThan(500);
  });

  it('has the slope of its likelihood', () => {
    const data = dataOf([{ x: 0.2, level: 1, shifts: [0] }, own(0.3, 2), own(0.4, 3), own(0.1, 0)], 1);
    const at = Float64Array.from([0.1, -2.4, -1.9, -3.5, 0.02]);
    const gradient = new Float64Array(5);
    logLikelihood(data, at, gradient);
    for (let i = 0; i < 5; i++) {
      const moved = (by: number) =>
        logLikelihood(
          data,
          at.map((v, j) => (j === i ? v + by : v)),
        );
      expect(gradient[i]).toBeCloseTo((moved(1e-6) - moved(-1e-6)) / 2e-6, 4);
    }
  });
});

describe('the next gaps', () => {
  const observations = [own(0.2, 1), own(0.3, 2), own(0.45, 3)];
  const posterior = posteriorOf(dataOf(observations), priorOf([]));
  const candidates = candidateGaps(posterior, 0);
  const next = nextGaps(posterior, candidates);

  /** Mean variance left, by fitting again with each outcome added. */
  const leftBy = (gap: number) => {
    const { byNode } = candidates.find((each) => each.gap === gap)!;
    return byNode.reduce((sum, chances, level) => {
      const chance = chances.reduce((s, c, i) => s + c * posterior.weights[i], 0);
      const after = posteriorOf(dataOf([...observations, own(gap, level)]), priorOf([]));
      return sum + chance * spreadOf(middles(after), after.weights).sd ** 2;
    }, 0);
  };

  it('leave the uncertainty that fitting again with each outcome leaves', () => {
    expect(Math.sqrt(leftBy(next[0].gap)) / next[0].sdAfter).toBeCloseTo(1, 1);
  });

  it('leave less than others do, and less with every one', () => {
    const others = candidates.filter(
      ({ gap }) => Math.abs(gap - next[0].gap) > 0.03 && Math.round(gap * 100) % 5 === 0,
    );
    expect(others.length).toBeGreaterThan(5);
    for (const { gap } of others) expect(leftBy(gap)).toBeGreaterThan(next[0].sdAfter ** 2 * 0.98);
    expect(next.length).toBe(3);
    const sds = next.map(({ sdAfter }) => sdAfter);
    expect(sds).toEqual(sds.toSorted((a, b) => b - a));
    expect(sds[0]).toBeLessThan(spreadOf(middles(posterior), posterior.weights).sd);
    const [a, b, c] = next.map(({ gap }) => gap).toSorted((p, q) => p - q);
    expect(Math.min(b - a, c - b)).toBeGreaterThan(0.029);
  });
});

import { describe, expect, it } from 'vitest';
import { middles } from '../../../lib/fit/trials/gapAdvice.js';
import { gapData } from '../../../lib/fit/trials/gapFit.js';
import { type Growth, growthFrom, growthPrior } from '../../../lib/fit/trials/growth.js';
import { posteriorOf } from '../../../lib/fit/trials/posterior.js';
import { gapPrior, priorOf } from '../../../lib/fit/trials/priors.js';
import { spreadOf } from '../../../lib/fit/trials/spread.js';
import type { Reading, Trial } from '../../../lib/fit/trials/trialSchema.js';
import { bounds, normal, printed, random, type Truth } from './simulate.js';

const SEEDS = 200;

function truthFrom(next: () => number): Truth {
  const { fused, tight, free, width } = gapPrior;
  const log = ({ median, logSd }: { median: number; logSd: number }) =>
    median * Math.exp(logSd * normal(next));
  const first = fused.mean + fused.sd * normal(next);
  const second = first + log(tight);
  return { boundaries: [first, second, second + log(free)], width: log(width) };
}

function middleFrom(trials: Trial[]) {
  const { data, shifts } = gapData(trials, { dryness: 'unknown', printer: 'own' });
  const posterior = posteriorOf(data, priorOf(shifts));
  return spreadOf(middles(posterior), posterior.weights);
}

/** In how many of the seeds the middle lies in what is to hold it with a chance of 80 %. */
function covered(trial: (next: () => number) => { truth: Truth; trials: Trial[] }): number {
  let count = 0;
  for (let seed = 1; seed <= SEEDS; seed++) {
    const { truth, trials } = trial(random(seed));
    const { least, most } = middleFrom(trials);
    const middle = (truth.boundaries[1] + truth.boundaries[2]) / 2;
    if (least <= middle && middle <= most) count++;
  }
  return count;
}

const within = (count: number, [least, most]: [number, number]) => {
  expect(count).toBeGreaterThanOrEqual(least);
  expect(count).toBeLessThanOrEqual(most);
};

describe('the 80 % interval of the middle of the free gaps holds it as often as it says', () => {
  it.each([3, 8])('for truths as believed beforehand, after %i trials', (count) => {
    const found = covered((next) => {
      const truth = truthFrom(next);
      const gaps = Array.from({ length: count }, (_, i) => 0.1 + (0.4 * i) / (count - 1));
      return { truth, trials: gaps.map((gap) => ({ ...printed(truth, gap, next), printer: 'own' })) };
    });
    within(found, bounds(SEEDS, 0.8));
  });

  it('with half the trials from another printer that is off by an unknown amount', () => {
    const found = covered((next) => {
      const truth = truthFrom(next);
      const shift = gapPrior.shift.printer * normal(next);
      const other = { ...truth, boundaries: truth.boundaries.map((b) => b + shift) as Truth['boundaries'] };
      const trials = [0.1, 0.2, 0.3, 0.4, 0.5].flatMap((gap) => [
        { ...printed(truth, gap, next), printer: 'own' },
        { ...printed(other, gap, next), printer: 'other' },
      ]);
      return { truth, trials };
    });
    within(found, bounds(SEEDS, 0.8));
  });

  it('for one printer that is not as believed, once trials outweigh the belief', () => {
    const truth: Truth = { boundaries: [0.2, 0.26, 0.46], width: 0.03 };
    const found = covered((next) => {
      const gaps = Array.from({ length: 30 }, (_, i) => 0.1 + (0.5 * i) / 29);
      return { truth, trials: gaps.map((gap) => ({ ...printed(truth, gap, next), printer: 'own' })) };
    });
    within(found, bounds(SEEDS, 0.8));
  });
});

describe('the 80 % intervals from readings', () => {
  it('hold growth, first-layer growth and shrinkage as often as they say', () => {
    const drawn: Omit<Reading, 'read'>[] = [
      { feature: 'base tangent length', drawn: 11.3 },
      { feature: 'over pins', drawn: 29, perWall: 5.4 },
      { feature: 'bar', drawn: 20 },
      { feature: 'hole', drawn: 20 },
      { feature: 'bar', drawn: 100 },
      { feature: 'bar', drawn: 20, firstLayer: true },
    ];
    const figures = ['growth', 'firstLayerGrowth', 'shrinkage'] as const;
    const held = { growth: 0, firstLayerGrowth: 0, shrinkage: 0 };
    for (let seed = 1; seed <= SEEDS; seed++) {
      const next = random(seed);
      const truth = Object.fromEntries(
        figures.map((figure) => [figure, growthPrior[figure].mean + growthPrior[figure].sd * normal(next)]),
      ) as Record<(typeof figures)[number], number>;
      const error = growthPrior.error.median * Math.exp(growthPrior.error.logSd * normal(next));
      const readings = drawn.map((one) => {
        const walls = truth.growth + (one.firstLayer ? truth.firstLayerGrowth : 0);
        const perWall = one.perWall ?? (one.feature === 'hole' ? -2 : 2);
        const read = one.drawn * (1 - truth.shrinkage / 100) + perWall * walls + error * normal(next);
        return { ...one, read };
      });
      const found: Growth = growthFrom(readings);
      for (const figure of figures)
        if (found[figure].least <= truth[figure] && truth[figure] <= found[figure].most) held[figure]++;
    }
    for (const figure of figures) within(held[figure], bounds(SEEDS, 0.8));
  });
});

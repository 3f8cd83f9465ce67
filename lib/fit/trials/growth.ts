import { usual } from '../../spec/usual.js';
import { cholesky, solveLower, solveUpper } from './cholesky.js';
import type { Uncertain } from './spread.js';
import { perWallOf, type Reading } from './trialSchema.js';

/** What readings say of a printer and filament. */
export interface Growth {
  /** How far printed walls stand out beyond drawn ones: `printer.growth`, mm. */
  growth: Figure;
  /** How far the first layer stands out beyond the walls above it: `printer.firstLayerGrowth`, mm. */
  firstLayerGrowth: Figure;
  /** How much smaller a print is than drawn: `filament.shrinkage`, percent. */
  shrinkage: Figure;
  /** Readings that are far from what all others together expect, mm: worth reading again. */
  misfits: { reading: Reading; expected: number }[];
}

/** A figure, and whether the readings tell it well enough to draw a set by it. */
export interface Figure extends Uncertain {
  known: boolean;
}

/**
 * What is believed before any reading, and down to which standard deviation a figure counts as known. mm, shrinkage
 * in percent. Common practice, no source.
 */
export const growthPrior = {
  growth: { mean: 0, sd: 0.1, known: 0.02 },
  firstLayerGrowth: { mean: usual.firstLayerGrowth, sd: 0.1, known: 0.04 },
  shrinkage: { mean: 0.35, sd: 0.35, known: 0.1 },
  /** Error of a reading, calipers and print together: median, and standard deviation of its logarithm. */
  error: { median: 0.03, logSd: 0.5 },
} as const;

const figures = ['growth', 'firstLayerGrowth', 'shrinkage'] as const;
/** Half-widths of the normal density beyond which lie 10 % on each side. */
const TENTH = 1.2816;
/**
 * Errors of a reading that are tried, in standard deviations of its logarithm: up to some millimetres, so that readings
 * which do not agree make everything uncertain.
 */
const ERRORS = Array.from({ length: 53 }, (_, i) => (i - 12) / 4);
/** A reading is a misfit when it is off by more than so many standard deviations. */
const MISFIT = 4;
/** Misfits that are listed. */
const MOST_MISFITS = 5;
const MANY = 100;

/**
 * Growth and shrinkage from readings. Each reading is taken as
 *
 *     drawn × (1 − shrinkage / 100) + perWall × (growth, and on the first layer firstLayerGrowth too) + error
 *
 * with normal errors of one size, which is not known either: for each size the posterior is normal in closed form
 * (linear regression with a normal prior), and the sizes are weighted by how well they explain the readings.
 */
export function growthFrom(readings: readonly Reading[]): Growth {
  const rows = readings.map(({ feature, drawn, perWall = perWallOf(feature)!, firstLayer }) => [
    perWall,
    firstLayer ? perWall : 0,
    -drawn / 100,
  ]);
  const beyond = readings.map(({ drawn, read }) => read - drawn);
  const fits = ERRORS.map((at) => {
    const error = growthPrior.error.median * Math.exp(at * growthPrior.error.logSd);
    const fit = fitted(rows, beyond, error);
    return { ...fit, evidence: fit.evidence - (at * at) / 2 };
  });
  const most = Math.max(...fits.map(({ evidence }) => evidence));
  const weights = fits.map(({ evidence }) => Math.exp(evidence - most));
  const total = weights.reduce((a, b) => a + b);
  const mean = figures.map((_, j) => fits.reduce((s, fit, i) => s + (weights[i] / total) * fit.mean[j], 0));
  const sd = figures.map((_, j) => {
    const square = (fit: Fit) => fit.variance[j] + (fit.mean[j] - mean[j]) ** 2;
    return Math.sqrt(fits.reduce((s, fit, i) => s + (weights[i] / total) * square(fit), 0));
  });
  const figure = (j: number): Figure => ({
    mean: mean[j],
    sd: sd[j],
    least: mean[j] - TENTH * sd[j],
    most: mean[j] + TENTH * sd[j],
    known: sd[j] <= growthPrior[figures[j]].known,
  });
  return {
    growth: figure(0),
    firstLayerGrowth: figure(1),
    shrinkage: figure(2),
    misfits: misfitsOf(rows, beyond, readings),
  };
}

/**
 * Readings that the others do not bear out: left out, what is read is far from what the rest expects. The worst is
 * found first and then counts no more, lest it make others look bad.
 */
function misfitsOf(
  rows: readonly number[][],
  beyond: readonly number[],
  readings: readonly Reading[],
): Growth['misfits'] {
  const kept = rows.map((_, i) => i);
  const misfits: Growth['misfits'] = [];
  const without = (left: number | undefined) => {
    const others = kept.filter((k) => k !== left);
    return fitted(
      others.map((k) => rows[k]),
      others.map((k) => beyond[k]),
      growthPrior.error.median,
    );
  };
  while (misfits.length < MOST_MISFITS) {
    // Among very many, one more or less makes no difference but to the time it takes.
    const all = kept.length > MANY ? without(undefined) : undefined;
    const off = kept.map((i) => against(all ?? without(i), rows[i], beyond[i]));
    const worst = off.reduce((a, { errors }, n) => (errors > (off[a]?.errors ?? MISFIT) ? n : a), -1);
    if (worst < 0) break;
    const [i] = kept.splice(worst, 1);
    misfits.push({ reading: readings[i], expected: readings[i].drawn + off[worst].expected });
  }
  return misfits;
}

/** What a fit expects a reading to be beyond the drawn size, and by how many standard deviations it is off. */
function against({ mean, variance }: Fit, row: readonly number[], read: number) {
  const { median } = growthPrior.error;
  const expected = row.reduce((sum, x, j) => sum + x * mean[j], 0);
  // Without regard to how the figures' errors go together.
  const wide = Math.sqrt(median ** 2 + row.reduce((sum, x, j) => sum + x * x * variance[j], 0));
  return { expected, errors: Math.abs(read - expected) / wide };
}

interface Fit {
  mean: Float64Array;
  variance: number[];
  /** Logarithm of the chance of the readings, but for a constant. */
  evidence: number;
}

/** Linear regression with the priors of the three figures and one error of readings. */
function fitted(rows: readonly number[][], beyond: readonly number[], error: number): Fit {
  const size = figures.length;
  const precision = new Float64Array(size * size);
  const pull = new Float64Array(size);
  for (const [j, figure] of figures.entries()) {
    const { mean, sd } = growthPrior[figure];
    precision[j * size + j] = 1 / sd ** 2;
    pull[j] = mean / sd ** 2;
  }
  for (const [i, row] of rows.entries())
    for (let j = 0; j < size; j++) {
      pull[j] += (row[j] * beyond[i]) / error ** 2;
      for (let k = 0; k < size; k++) precision[j * size + k] += (row[j] * row[k]) / error ** 2;
    }
  // The priors alone make it positive definite.
  const lower = cholesky(precision, size)!;
  const mean = solveUpper(lower, solveLower(lower, pull));
  const variance = figures.map((_, j) => {
    const half = solveLower(
      lower,
      figures.map((_, k) => (k === j ? 1 : 0)),
    );
    return half.reduce((sum, x) => sum + x * x, 0);
  });
  // Chance of the readings: prior times likelihood over posterior, all at the posterior's mean.
  let evidence = -rows.length * Math.log(error);
  for (const [i, row] of rows.entries()) {
    const miss = beyond[i] - row.reduce((sum, x, j) => sum + x * mean[j], 0);
    evidence -= (miss / error) ** 2 / 2;
  }
  for (const [j, figure] of figures.entries()) {
    evidence -= ((mean[j] - growthPrior[figure].mean) / growthPrior[figure].sd) ** 2 / 2;
    evidence -= Math.log(lower[j * size + j]);
  }
  return { mean, variance, evidence };
}

import type { Factor } from './conditions.js';
import type { NormalPrior } from './mode.js';
import { outcomes } from './trialSchema.js';

/**
 * What is believed before any trial, all lengths in mm. Common practice, no source: gaps of parts printed in place
 * are 0.2 to 0.4, printers with a 0.4 nozzle fuse somewhere below 0.2; wide enough that a few trials outweigh it.
 */
export const gapPrior = {
  /** Gap at which half of all prints are fused: mean and standard deviation of a normal one. */
  fused: { mean: 0.12, sd: 0.12 },
  /** How much more gap makes half of all prints free: median, and standard deviation of the logarithm. */
  tight: { median: 0.08, logSd: 0.6 },
  /** How much more again makes half of all prints loose. */
  free: { median: 0.16, logSd: 0.5 },
  /** How gradual each change is (logistic scale). */
  width: { median: 0.02, logSd: 0.6 },
  /** How far other conditions move all three, standard deviation about the conditions asked for. */
  shift: { printer: 0.05, filament: 0.04, dryness: 0.04 } satisfies Record<Factor, number>,
} as const;

/** The prior of the ordinal model's parameters, with a shift for each factor listed. */
export function priorOf(shifts: readonly Factor[]): NormalPrior {
  const { fused, tight, free, width, shift } = gapPrior;
  return {
    mean: [fused.mean, ...[tight, free, width].map(({ median }) => Math.log(median)), ...shifts.map(() => 0)],
    sd: [fused.sd, ...[tight, free, width].map(({ logSd }) => logSd), ...shifts.map((f) => shift[f])],
  };
}

/** Levels of an outcome. */
export const LEVELS = outcomes.length;

import { type Candidate, type Chances, meanChances, middles } from './gapAdvice.js';
import type { Posterior } from './posterior.js';
import { outcomes } from './trialSchema.js';

/** A gap worth printing next. */
export interface NextGap {
  /** `fit.gap`, mm. */
  gap: number;
  /** How it is likely to come out. */
  chances: Chances;
  /** Standard deviation of the middle of the free gaps that is to be expected once this and those before are printed, mm. */
  sdAfter: number;
}

/** Gaps printed together are so far apart at least, mm: the same gap twice on one coupon tells less than it seems. */
const APART = 0.03;
/** Nobody prints what is so certain to come out one way, though it may exclude what is unlikely. */
const CERTAIN = 0.9;
/** Printing is not worth it where it lessens the standard deviation by less than this share. */
const LEAST_GAIN = 0.02;

/**
 * The next gaps to print at, the most telling first. Criterion: the least expected posterior variance of the middle
 * of the free gaps, that is, the mean over the outcomes which a print may have, each with its chance, of the variance
 * that would be left. Gaps after the first are chosen with those before them printed at the same time, all their
 * outcomes open. Gaps of which the outcome is all but certain, and those within 0.03 of a chosen one, are left out.
 * @param most at most 3: each one more takes four times as long
 */
export function nextGaps(posterior: Posterior, candidates: readonly Candidate[], most = 3): NextGap[] {
  const values = middles(posterior);
  const open = candidates.filter(({ byNode }) =>
    Object.values(meanChances(byNode, posterior.weights)).every((chance) => chance <= CERTAIN),
  );
  // Weights of the nodes for each outcome of the gaps chosen so far, not made 1 again: their sum is its chance.
  let branches = [posterior.weights];
  let before = Math.sqrt(varianceLeft(branches, undefined, values));
  const chosen: NextGap[] = [];
  while (chosen.length < most) {
    let best: Candidate | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const candidate of open) {
      if (chosen.some(({ gap }) => Math.abs(gap - candidate.gap) < APART - 1e-9)) continue;
      const left = varianceLeft(branches, candidate, values);
      if (left < least) [best, least] = [candidate, left];
    }
    const sdAfter = Math.sqrt(least);
    if (!best || sdAfter > before * (1 - LEAST_GAIN)) break;
    chosen.push({ gap: best.gap, chances: meanChances(best.byNode, posterior.weights), sdAfter });
    before = sdAfter;
    const { byNode } = best;
    branches = branches.flatMap((branch) =>
      outcomes.map((_, k) => branch.map((weight, i) => weight * byNode[k][i])),
    );
  }
  return chosen;
}

/** Variance of the values once every branch is known, and the outcome at the candidate too; the mean over them all. */
function varianceLeft(
  branches: readonly Float64Array[],
  candidate: Candidate | undefined,
  values: readonly number[],
): number {
  let left = 0;
  for (const branch of branches)
    for (const chances of candidate?.byNode ?? [undefined]) {
      let [sum, first, second] = [0, 0, 0];
      for (let i = 0; i < values.length; i++) {
        const weight = chances ? branch[i] * chances[i] : branch[i];
        sum += weight;
        first += weight * values[i];
        second += weight * values[i] * values[i];
      }
      if (sum > 1e-12) left += second - (first * first) / sum;
    }
  return left;
}

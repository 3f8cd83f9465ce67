import { ranges } from '../../spec/ranges.js';
import { chancesAt } from './ordinalModel.js';
import type { Posterior } from './posterior.js';
import { spreadOf, type Uncertain } from './spread.js';
import { type Outcome, outcomes } from './trialSchema.js';

/** The chance of each outcome, together 1. */
export type Chances = Record<Outcome, number>;

/** What the trials say of the gap. Gaps are values of `fit.gap`, mm, with the growth that is compensated. */
export interface GapAdvice {
  /** The gap at which a print is likeliest free. */
  gap: number;
  /** The chance of each outcome at it. */
  chances: Chances;
  /** The gaps at which the chance of free is at least `LIKELY`; null where it nowhere is. */
  range: { least: number; most: number } | null;
  /** The middle between the change from tight to free and the one from free to loose. */
  middle: Uncertain;
  /** Where half of all prints have changed from one outcome to the next. */
  changes: ({ from: Outcome; to: Outcome } & Uncertain)[];
}

/** A print is likely free at this chance. */
export const LIKELY = 0.7;
/** Gaps are offered in steps of this, mm: printers hold no finer ones. */
const STEP = 0.01;
/** Of `fit.gap`, mm. */
const [LEAST, MOST] = ranges.gap;

/** The chances of one gap at every node. */
export interface Candidate {
  gap: number;
  /** For each outcome, its chance at each node. */
  byNode: Float64Array[];
}

/**
 * The gaps in question, in whole hundredths of a millimetre: from where nothing but fused is likely to where nothing
 * but loose is.
 * @param growth `printer.growth` that prints are drawn with, mm: the drawn gap, which trials are about, is the one
 * asked for and twice that
 */
export function candidateGaps(posterior: Posterior, growth: number): Candidate[] {
  const { boundaries, weights } = posterior;
  const first = spreadOf(
    boundaries.map((b) => b[0]),
    weights,
  );
  const last = spreadOf(
    boundaries.map((b) => b[2]),
    weights,
  );
  const from = clampGap(first.mean - 2 * first.sd - 2 * growth);
  const to = clampGap(last.mean + 2 * last.sd - 2 * growth);
  const count = Math.round((to - from) / STEP) + 1;
  return Array.from({ length: count }, (_, i) => {
    const gap = Math.round((from + i * STEP) / STEP) / Math.round(1 / STEP);
    return { gap, byNode: chancesByNode(gap + 2 * growth, posterior) };
  });
}

/**
 * The gap to print at and how well it is known.
 * @param candidates from `candidateGaps`, of the same posterior and growth
 */
export function gapAdvice(posterior: Posterior, growth: number, candidates: readonly Candidate[]): GapAdvice {
  const { boundaries, weights } = posterior;
  const all = candidates.map(({ gap, byNode }) => ({ gap, chances: meanChances(byNode, weights) }));
  const best = all.reduce((a, b) => (b.chances.free > a.chances.free ? b : a));
  const likely = all.filter(({ chances }) => chances.free >= LIKELY).map(({ gap }) => gap);
  const asked = (values: number[]) =>
    spreadOf(
      values.map((value) => value - 2 * growth),
      weights,
    );
  return {
    ...best,
    range: likely.length ? { least: likely[0], most: likely[likely.length - 1] } : null,
    middle: asked(middles(posterior)),
    changes: outcomes.slice(1).map((to, k) => ({
      from: outcomes[k],
      to,
      ...asked(boundaries.map((b) => b[k])),
    })),
  };
}

/** Of each node, the middle of the drawn gaps at which a print is free, mm. */
export function middles({ boundaries }: Posterior): number[] {
  return boundaries.map((b) => (b[1] + b[2]) / 2);
}

/** The chances at a gap, over all nodes. */
export function meanChances(byNode: readonly Float64Array[], weights: Float64Array): Chances {
  const means = byNode.map((chances) => chances.reduce((sum, chance, i) => sum + weights[i] * chance, 0));
  return Object.fromEntries(outcomes.map((outcome, k) => [outcome, means[k]])) as Chances;
}

function chancesByNode(drawn: number, { boundaries, widths }: Posterior): Float64Array[] {
  const byNode = outcomes.map(() => new Float64Array(widths.length));
  const chances: number[] = [];
  for (let i = 0; i < widths.length; i++) {
    chancesAt(drawn, boundaries[i], widths[i], chances);
    for (let k = 0; k < byNode.length; k++) byNode[k][i] = chances[k];
  }
  return byNode;
}

function clampGap(gap: number): number {
  return Math.min(Math.max(Math.round(gap / STEP) * STEP, LEAST), MOST);
}

import { type Conditions, conditionsOf, groupsOf, levelOf, sameConditions } from './conditions.js';
import { type Disagreement, disagreementsOf } from './disagreements.js';
import { candidateGaps, type GapAdvice, gapAdvice, LIKELY } from './gapAdvice.js';
import { gapData } from './gapFit.js';
import { type Growth, growthFrom } from './growth.js';
import { type NextGap, nextGaps } from './nextGaps.js';
import { posteriorOf } from './posterior.js';
import { priorOf } from './priors.js';
import { type ProfileAdvice, profileAdvice } from './profileAdvice.js';
import type { Trial } from './trialSchema.js';

/** What a log says of one printer, filament and dryness. Lengths in mm. */
export interface Advice {
  conditions: Conditions;
  /** Trials with an outcome under these conditions, under others, and left out because theirs are too rare. */
  trials: { own: number; others: number; leftOut: number };
  /** Whether the gap is known well enough to print at it. */
  knows: 'enough' | 'too little';
  /** What is missing, where too little is known. */
  lacks: string | null;
  /** `printer.growth` that the latest trial was drawn with: all gaps here are values of `fit.gap` with it. */
  compensated: number;
  fit: GapAdvice;
  next: NextGap[];
  disagreements: Disagreement[];
  /** Sizes read on prints of this printer and filament. */
  readings: number;
  growth: Growth;
  /** What is ready for a profile file. */
  profile: ProfileAdvice;
  /** Symptoms in `troubles` that the latest outcomes suggest. */
  troubles: string[];
}

/** Fewer trials than this say too little whatever they are. */
const FEWEST_TRIALS = 3;
/** Outcomes of so many of the latest trials suggest troubles. */
const LATEST = 3;

/**
 * Advice for every group of conditions among the trials, that of the latest trial first; with conditions wanted,
 * for the groups that have them, or, where no trial has, for just those, from the trials of others and from what is
 * believed beforehand.
 */
export function advise(trials: readonly Trial[], wanted: Partial<Conditions> = {}): Advice[] {
  const asked = (['printer', 'filament', 'dryness'] as const).filter(
    (factor) => wanted[factor] !== undefined,
  );
  const target: Conditions = { dryness: 'unknown', ...wanted };
  const groups = groupsOf(trials).filter((group) => sameConditions(group, target, asked));
  if (!groups.length) groups.push(target);
  return groups.map((conditions) => adviceFor(trials, conditions));
}

function adviceFor(trials: readonly Trial[], conditions: Conditions): Advice {
  const ownTrials = trials.filter((trial) => sameConditions(conditionsOf(trial), conditions));
  const { data, shifts, own, others, leftOut } = gapData(trials, conditions);
  const compensated = latestGrowth(ownTrials) ?? latestGrowth(trials) ?? 0;
  const posterior = posteriorOf(data, priorOf(shifts));
  const candidates = candidateGaps(posterior, compensated);
  const fit = gapAdvice(posterior, compensated, candidates);
  const readings = trials
    .filter((trial) => sameConditions(conditionsOf(trial), conditions, ['printer', 'filament']))
    .flatMap((trial) => trial.readings ?? []);
  const growth = growthFrom(readings);
  const lacks = lacking(own + others, fit);
  return {
    conditions,
    trials: { own, others, leftOut },
    knows: lacks === null ? 'enough' : 'too little',
    lacks,
    compensated,
    fit,
    next: nextGaps(posterior, candidates),
    disagreements: disagreementsOf(ownTrials),
    readings: readings.length,
    growth,
    profile: profileAdvice(conditions, lacks === null ? fit.gap : undefined, compensated, growth),
    troubles: troublesOf(ownTrials),
  };
}

function lacking(count: number, { gap, chances }: GapAdvice): string | null {
  if (count < FEWEST_TRIALS) return `${count} of at least ${FEWEST_TRIALS} trials`;
  if (chances.free >= LIKELY) return null;
  const chance = Math.round(100 * chances.free);
  return `even at the likeliest gap, ${gap} mm, only ${chance} in 100 prints would be free; ${100 * LIKELY} are asked for`;
}

function latestGrowth(trials: readonly Trial[]): number | undefined {
  const latest = trials.findLast(({ outcome }) => outcome !== undefined);
  return latest && (latest.growth ?? 0);
}

function troublesOf(trials: readonly Trial[]): string[] {
  const latest = trials.filter(({ outcome }) => outcome !== undefined).slice(-LATEST);
  const suggested = latest.flatMap(({ outcome }) => {
    if (outcome === 'fused') return ['wont-turn'];
    if (outcome === 'tight') return ['binds'];
    return outcome === 'loose' ? ['planets-tip', 'skips'] : [];
  });
  const damp = latest.some((trial) => levelOf(conditionsOf(trial), 'dryness') === 'damp');
  return [...new Set([...suggested, ...(damp ? ['strings'] : [])])];
}

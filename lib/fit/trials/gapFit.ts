import { type Conditions, conditionsOf, type Factor, factors, levelOf } from './conditions.js';
import type { OrdinalData } from './ordinalModel.js';
import { LEVELS } from './priors.js';
import { outcomes, type Trial } from './trialSchema.js';

/** Trials as the ordinal model takes them. */
export interface GapData {
  data: OrdinalData;
  /** Which factor each shift belongs to. */
  shifts: Factor[];
  /** Trials under the very conditions asked about. */
  own: number;
  /** Trials under other conditions that count with a shift. */
  others: number;
  /** Trials of conditions too rare among the others to be given a shift. */
  leftOut: number;
}

/** More shifts than this are not fitted: the commonest other printers, filaments and states of dryness get one. */
const MOST_SHIFTS = 6;

/** Drawn gap of a trial, mm: the one asked for, and the growth set back on both flanks. */
export function drawnGapOf({ gap, growth = 0 }: Trial): number {
  return gap! + 2 * growth;
}

/**
 * Trials with an outcome, by their drawn gap, for boundaries under the target's conditions. Every other printer,
 * filament and dryness shifts the boundaries by an amount of its own, the same in all its trials.
 */
export function gapData(trials: readonly Trial[], target: Conditions): GapData {
  const gapTrials = trials.filter(({ outcome }) => outcome !== undefined);
  const other = (trial: Trial) =>
    factors
      .filter((factor) => levelOf(conditionsOf(trial), factor) !== levelOf(target, factor))
      .map((factor) => ({ factor, name: `${factor}: ${levelOf(conditionsOf(trial), factor)}` }));
  const uses = new Map<string, { factor: Factor; count: number }>();
  for (const { factor, name } of gapTrials.flatMap(other))
    uses.set(name, { factor, count: (uses.get(name)?.count ?? 0) + 1 });
  const kept = [...uses].sort(([, a], [, b]) => b.count - a.count).slice(0, MOST_SHIFTS);
  const numbers = new Map(kept.map(([name], i) => [name, i]));
  const used = gapTrials.filter((trial) => other(trial).every(({ name }) => numbers.has(name)));
  const own = used.filter((trial) => other(trial).length === 0).length;
  return {
    data: {
      levels: LEVELS,
      shifts: kept.length,
      observations: used.map((trial) => ({
        x: drawnGapOf(trial),
        level: outcomes.indexOf(trial.outcome!),
        shifts: other(trial).map(({ name }) => numbers.get(name)!),
      })),
    },
    shifts: kept.map(([, { factor }]) => factor),
    own,
    others: used.length - own,
    leftOut: gapTrials.length - used.length,
  };
}

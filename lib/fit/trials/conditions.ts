import type { Trial } from './trialSchema.js';

/** What a print was made with, as far as it decides which trials belong together. */
export interface Conditions {
  /** Undefined where it is not stated. */
  printer?: string;
  filament?: string;
  /** dry, damp or unknown. */
  dryness: Dryness;
}

/** State of the filament. */
export type Dryness = 'dry' | 'damp' | 'unknown';

/** What trials are grouped by. */
export const factors = ['printer', 'filament', 'dryness'] as const;
/** One of what trials are grouped by. */
export type Factor = (typeof factors)[number];

/** Filament dried for so long counts as dry, hours. Common practice, no source. */
const DRY_HOURS = 4;

/** The conditions of a trial. Filament dried for less than 4 hours is of unknown dryness. */
export function conditionsOf({ printer, filament, dryness = 'unknown' }: Trial): Conditions {
  const state = typeof dryness === 'string' ? dryness : dryness >= DRY_HOURS ? 'dry' : 'unknown';
  return {
    ...(printer === undefined ? {} : { printer }),
    ...(filament === undefined ? {} : { filament }),
    dryness: state,
  };
}

/** The name of a factor's level, letter case and spaces aside; empty where it is not stated. */
export function levelOf(conditions: Conditions, factor: Factor): string {
  return (conditions[factor] ?? '').trim().toLowerCase().replace(/\s+/g, ' ');
}

/** Whether all factors, or those named, have one level. */
export function sameConditions(a: Conditions, b: Conditions, of: readonly Factor[] = factors): boolean {
  return of.every((factor) => levelOf(a, factor) === levelOf(b, factor));
}

/**
 * The different conditions among trials, those of the latest first. Trials that hold readings alone make a group only
 * where no outcome is known of their printer and filament, since dryness does not matter to readings.
 */
export function groupsOf(trials: readonly Trial[]): Conditions[] {
  const groups: Conditions[] = [];
  const add = (of: readonly Trial[], by: readonly Factor[]) => {
    for (const trial of of.toReversed()) {
      const conditions = conditionsOf(trial);
      if (!groups.some((group) => sameConditions(group, conditions, by))) groups.push(conditions);
    }
  };
  const isOutcome = ({ outcome }: Trial) => outcome !== undefined;
  add(trials.filter(isOutcome), factors);
  add(
    trials.filter((trial) => !isOutcome(trial)),
    ['printer', 'filament'],
  );
  return groups;
}

/** Conditions in words: `workshop, PLA, dry`. */
export function showConditions({ printer, filament, dryness }: Conditions): string {
  return [
    printer ?? 'printer not stated',
    filament ?? 'filament not stated',
    dryness === 'unknown' ? 'dryness unknown' : dryness,
  ].join(', ');
}

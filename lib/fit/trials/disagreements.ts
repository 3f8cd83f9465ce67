import { drawnGapOf } from './gapFit.js';
import { outcomes, type Trial } from './trialSchema.js';

/** Two trials under the same conditions, of which the one with more gap came out tighter. */
export interface Disagreement {
  wider: { gap: number; outcome: string };
  narrower: { gap: number; outcome: string };
}

/** The pairs that disagree most, at most `most` of them; gaps as drawn, mm. */
export function disagreementsOf(trials: readonly Trial[], most = 3): Disagreement[] {
  // Of many prints alike one is enough.
  const kinds = new Map(
    trials
      .filter(({ outcome }) => outcome !== undefined)
      .map((trial) => [`${drawnGapOf(trial).toFixed(3)} ${trial.outcome}`, trial]),
  );
  const gapTrials = [...kinds.values()];
  const pairs = gapTrials.flatMap((wider) =>
    gapTrials
      .map((narrower) => ({
        wider,
        narrower,
        by: rank(narrower) - rank(wider),
        apart: drawnGapOf(wider) - drawnGapOf(narrower),
      }))
      .filter(({ by, apart }) => by > 0 && apart > 0),
  );
  const shown = (trial: Trial) => ({ gap: drawnGapOf(trial), outcome: trial.outcome! });
  return pairs
    .sort((a, b) => b.by - a.by || b.apart - a.apart)
    .slice(0, most)
    .map(({ wider, narrower }) => ({ wider: shown(wider), narrower: shown(narrower) }));
}

function rank({ outcome }: Trial): number {
  return outcomes.indexOf(outcome!);
}

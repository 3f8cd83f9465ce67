import { Refusal } from '../../spec/refusal.js';
import type { PlanetarySpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { nearestSentence } from './nearestWorking.js';

/** A refusal of teeth that cannot be drawn, with what would work where it offers nothing itself. */
export function helpedRefusal(spec: PlanetarySpec, refusal: Refusal): Refusal {
  const [{ parameter, rule, nearest, value }, ...rest] = refusal.problems;
  const help = nearest.length ? '' : nearestSentence(spec);
  return help ? new Refusal([{ parameter, value, rule: joined(rule, help), nearest }, ...rest]) : refusal;
}

/**
 * Checks, of which the first that stops the job says what would work; it is the same for the others.
 * @param stops whether a check stops the job
 */
export function helpedChecks(
  spec: PlanetarySpec,
  checks: readonly Check[],
  stops: (check: Check) => boolean,
): Check[] {
  const first = checks.findIndex(stops);
  if (first < 0) return [...checks];
  // Sets that a check names itself have been tried too.
  const named = checks.some(({ holds, says }) => !holds && says.includes('Nearest sets that '));
  const help = nearestSentence(spec, !named);
  return checks.map((check, i) =>
    i === first && help ? { ...check, says: joined(check.says, help) } : check,
  );
}

function joined(says: string, help: string): string {
  return `${says.replace(/\.?$/, '.')} ${help}`;
}

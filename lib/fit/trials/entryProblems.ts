import type * as z from 'zod';
import { codeOfNumber, type ProblemCode } from '../../problemCode.js';
import type { Problem } from '../../refusal.js';
import { clamp, closest, numberMeant } from '../../spec/nearest.js';
import { fromTo, type Range } from '../../spec/ranges.js';
import { features, most, outcomes, trialEntries, trialRanges } from './trialSchema.js';

/** A problem of a log entry, and where it stands. */
export interface EntryProblem extends Problem {
  path: (string | number)[];
}

interface Rule {
  says: string;
  range?: Range;
  whole?: boolean;
  words?: readonly string[];
}

const label: Rule = { says: `a name of at most ${most.label} letters on one line` };

const number = (range: Range, unit: string): Rule => ({ says: `a number ${fromTo(range)}${unit}`, range });

/** What each entry must be, in words. */
const rules: Record<string, Rule> = {
  gap: number(trialRanges.gap, ' mm'),
  outcome: { says: `one of ${outcomes.join(', ')}`, words: outcomes },
  printer: label,
  filament: label,
  dryness: {
    says: `dry, damp, unknown or the hours it was dried, ${trialRanges.dried.join(' to ')}`,
    range: trialRanges.dried,
    words: ['dry', 'damp', 'unknown'],
  },
  temperature: number(trialRanges.temperature, ' °C'),
  layer: number(trialRanges.layer, ' mm'),
  growth: number(trialRanges.growth, ' mm'),
  date: { says: 'a day, as 2026-05-30' },
  notes: { says: `text of at most ${most.notes} letters` },
  readings: { says: `a list of at most ${most.readings} readings` },
  trials: { says: `a list of at most ${most.trials} trials` },
  feature: { says: `one of ${features.join(', ')}`, words: features },
  part: label,
  teeth: { says: `a whole number ${fromTo(trialRanges.teeth)}`, whole: true, range: trialRanges.teeth },
  drawn: number(trialRanges.drawn, ' mm'),
  read: number(trialRanges.read, ' mm'),
  perWall: number(trialRanges.perWall, ''),
  firstLayer: { says: 'true or false', words: ['true', 'false'] },
};

const readingKeys = ['feature', 'part', 'teeth', 'drawn', 'read', 'perWall', 'firstLayer'];

/** What zod found wrong with an entry or a log, in the words of the project. */
export function entryProblems(issues: readonly z.core.$ZodIssue[], data: unknown): EntryProblem[] {
  const problems = issues.flatMap((issue): EntryProblem[] => {
    const path = issue.path.map((key) => (typeof key === 'number' ? key : String(key)));
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => {
        const nearest = [closest(key, keysAt(path))];
        return { ...named([...path, key], data), code: 'unknown-key', rule: 'unknown key', nearest };
      });
    const at = named(path, data);
    const key = path[path.length - 1];
    if (issue.code === 'custom' && issue.message !== 'Invalid input') {
      const code = at.value === undefined || path.length === 0 ? 'missing' : 'beyond-limit';
      return [{ ...at, code, rule: issue.message, nearest: offers(key, undefined) }];
    }
    const rule = rules[String(key)];
    const must = at.value === undefined ? 'is required: ' : 'must be ';
    const says = must + (rule?.says ?? 'a mapping of what is known of a trial');
    return [{ ...at, code: codeOf(rule, at.value), rule: says, nearest: offers(key, at.value) }];
  });
  return problems.filter(({ path, value }) => value !== undefined || !misspelt(path, problems));
}

function codeOf(rule: Rule | undefined, value: unknown): ProblemCode {
  if (value === undefined) return 'missing';
  if (rule?.words) return 'not-one-of';
  if (rule?.range) return codeOfNumber(value, rule.whole);
  return typeof value === 'string' ? 'wrong-form' : 'wrong-type';
}

/** Whether the missing entry at a path is there under a key that is near to it. */
function misspelt(path: EntryProblem['path'], problems: readonly EntryProblem[]): boolean {
  const inSame = (other: EntryProblem['path']) =>
    other.length === path.length && other.slice(0, -1).every((key, i) => key === path[i]);
  return problems.some(
    ({ code, nearest, path: other }) =>
      code === 'unknown-key' && inSame(other) && nearest[0] === path[path.length - 1],
  );
}

function named(path: (string | number)[], data: unknown) {
  let value = data;
  for (const key of path) value = (value as Record<string, unknown> | undefined)?.[key];
  const parameter = path.map((key, i) => (typeof key === 'number' ? `[${key + 1}]` : i ? `.${key}` : key));
  return { path, parameter: parameter.join('') || 'trial', value };
}

function keysAt(path: readonly (string | number)[]): readonly string[] {
  if (path.includes('readings')) return readingKeys;
  return path.length ? Object.keys(trialEntries) : ['trials'];
}

function offers(key: string | number | undefined, value: unknown): unknown[] {
  const { range, words } = rules[String(key)] ?? {};
  const meant = numberMeant(value);
  if (range && !Number.isNaN(meant)) {
    const within = clamp(meant, ...range);
    return [key === 'teeth' ? Math.round(within) : within];
  }
  if (!words) return [];
  return typeof value === 'string' ? [closest(value, words)] : [...words];
}

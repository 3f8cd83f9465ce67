import type * as z from 'zod';
import { clamp, closest, numberMeant } from '../../spec/nearest.js';
import type { Problem } from '../../spec/refusal.js';
import { features, outcomes, trialEntries } from './trialSchema.js';

/** A problem of a log entry, and where it stands. */
export interface EntryProblem extends Problem {
  path: (string | number)[];
}

interface Rule {
  says: string;
  range?: readonly [number, number];
  words?: readonly string[];
}

/** What each entry must be, in words; limits as in the schema. */
const rules: Record<string, Rule> = {
  gap: { says: 'a number from 0.02 to 2 mm', range: [0.02, 2] },
  outcome: { says: `one of ${outcomes.join(', ')}`, words: outcomes },
  printer: { says: 'a name of at most 100 letters on one line' },
  filament: { says: 'a name of at most 100 letters on one line' },
  dryness: {
    says: 'dry, damp, unknown or the hours it was dried, 0 to 1000',
    range: [0, 1000],
    words: ['dry', 'damp', 'unknown'],
  },
  temperature: { says: 'a number from 100 to 500 °C', range: [100, 500] },
  layer: { says: 'a number from 0.02 to 1.5 mm', range: [0.02, 1.5] },
  growth: { says: 'a number from -0.5 to 0.5 mm', range: [-0.5, 0.5] },
  date: { says: 'a day, as 2026-05-30' },
  notes: { says: 'text of at most 2000 letters' },
  readings: { says: 'a list of at most 100 readings' },
  trials: { says: 'a list of at most 5000 trials' },
  feature: { says: `one of ${features.join(', ')}`, words: features },
  part: { says: 'a name of at most 100 letters on one line' },
  teeth: { says: 'a whole number from 1 to 400', range: [1, 400] },
  drawn: { says: 'a number from 0.1 to 3000 mm', range: [0.1, 3000] },
  read: { says: 'a number from 0.1 to 3000 mm', range: [0.1, 3000] },
  perWall: { says: 'a number from -100 to 100', range: [-100, 100] },
  firstLayer: { says: 'true or false', words: ['true', 'false'] },
};

const UNKNOWN = 'unknown key';
const readingKeys = ['feature', 'part', 'teeth', 'drawn', 'read', 'perWall', 'firstLayer'];

/** What zod found wrong with an entry or a log, in the words of the project. */
export function entryProblems(issues: readonly z.core.$ZodIssue[], data: unknown): EntryProblem[] {
  const problems = issues.flatMap((issue): EntryProblem[] => {
    const path = issue.path.map((key) => (typeof key === 'number' ? key : String(key)));
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({
        ...named([...path, key], data),
        rule: UNKNOWN,
        nearest: [closest(key, keysAt(path))],
      }));
    const at = named(path, data);
    if (issue.code === 'custom' && issue.message !== 'Invalid input')
      return [{ ...at, rule: issue.message, nearest: offers(path[path.length - 1], undefined) }];
    const rule = rules[String(path[path.length - 1])];
    const must = at.value === undefined ? 'is required: ' : 'must be ';
    return [
      {
        ...at,
        rule: must + (rule?.says ?? 'a mapping of what is known of a trial'),
        nearest: offers(path[path.length - 1], at.value),
      },
    ];
  });
  return problems.filter(({ path, value }) => value !== undefined || !misspelt(path, problems));
}

/** Whether the missing entry at a path is there under a key that is near to it. */
function misspelt(path: EntryProblem['path'], problems: readonly EntryProblem[]): boolean {
  const inSame = (other: EntryProblem['path']) =>
    other.length === path.length && other.slice(0, -1).every((key, i) => key === path[i]);
  return problems.some(
    ({ rule, nearest, path: other }) =>
      rule === UNKNOWN && inSame(other) && nearest[0] === path[path.length - 1],
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

import { dirname, join } from 'node:path';
import { entryProblems } from '../lib/fit/trials/entryProblems.js';
import { readPhrase } from '../lib/fit/trials/readingPhrase.js';
import { type Reading, type Trial, trialSchema } from '../lib/fit/trials/trialSchema.js';
import { type Problem, Refusal, refuseAll } from '../lib/refusal.js';
import { changedFiles, digestsAt } from '../lib/write/digests.js';
import { readText } from '../lib/write/readText.js';
import { readingOf, readTrialSheet, sheetDefaults, type TrialSheet } from '../lib/write/trials/sheetTrial.js';
import { complain } from './output.js';
import { number } from './planWishes.js';
import type { Arguments } from './usage.js';

/**
 * The trial that flags describe, with what the sheet of the printed set says where they say nothing.
 * @param today date of the trial where none is given, as 2026-05-30
 * @throws Refusal that names flags, with every problem found
 */
export async function trialOf(argv: Arguments, today: string): Promise<Trial> {
  const sheet = argv.sheet === undefined ? undefined : await sheetAt(String(argv.sheet));
  const problems: Problem[] = [];
  const read = <T>(reader: () => T): T | undefined => {
    try {
      return reader();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      problems.push(...error.problems);
      return undefined;
    }
  };
  const numberAt = (flag: string) =>
    argv[flag] === undefined ? undefined : read(() => number(flag, String(argv[flag])));
  const phrases = argv.reading === undefined ? [] : [argv.reading].flat().map(String);
  const readings = phrases.flatMap(
    (text): Reading[] => read(() => [readingOf(readPhrase(text), sheet)]) ?? [],
  );
  const defaults = sheet && argv.outcome !== undefined ? sheetDefaults(sheet) : undefined;
  const entry = {
    gap: numberAt('gap') ?? defaults?.gap,
    outcome: argv.outcome,
    printer: argv.printer,
    filament: argv.filament ?? (sheet && sheetDefaults(sheet).filament),
    dryness: argv.dryness === undefined ? undefined : drynessOf(String(argv.dryness)),
    temperature: numberAt('temperature'),
    layer: numberAt('layer') ?? (sheet && sheetDefaults(sheet).layer),
    growth: numberAt('growth') ?? defaults?.growth,
    date: argv.date ?? today,
    notes: argv.notes,
    readings: readings.length ? readings : undefined,
  };
  const given = Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined));
  const parsed = trialSchema.safeParse(given);
  if (!parsed.success) {
    const unread = new Set(problems.map(({ parameter }) => parameter));
    const missing = ({ parameter }: Problem) =>
      unread.has(parameter) || (parameter === 'trial' && unread.has('reading'));
    problems.push(
      ...entryProblems(parsed.error.issues, given)
        .filter((problem) => !missing(problem))
        .map(({ path: _, ...problem }) => problem),
    );
  }
  refuseAll(problems);
  return parsed.data!;
}

/** A word, or hours: `6`, `6h`, `6 hours`. */
function drynessOf(text: string): string | number {
  const hours = /^(\d+(?:\.\d+)?) ?(?:h|hours?)?$/.exec(text.trim())?.[1];
  return hours === undefined ? text : Number(hours);
}

async function sheetAt(path: string): Promise<TrialSheet> {
  const sheet = readTrialSheet(readText('sheet', path), path);
  // What was printed may be another set than the one that the sheet is of.
  for (const name of await changedFiles(dirname(path), digestsAt(path) ?? {}))
    complain(
      `${join(dirname(path), name)} is not the file that ${path} speaks of; was it printed from another?`,
    );
  return sheet;
}

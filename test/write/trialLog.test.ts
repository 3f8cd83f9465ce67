import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Trial } from '../../lib/fit/trials/trialSchema.js';
import { addToLog } from '../../lib/write/trials/addToLog.js';
import { withLock } from '../../lib/write/trials/lock.js';
import { addToLogFile, readLogFile } from '../../lib/write/trials/logFile.js';
import { readLog } from '../../lib/write/trials/readLog.js';
import { problemsOf } from '../spec/table.js';

const folder = mkdtempSync(join(tmpdir(), 'cogweave-trials-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const trial: Trial = {
  gap: 0.3,
  outcome: 'free',
  printer: 'workshop',
  notes: 'yes: # "quoted"\nsecond line',
};

/** A log as somebody keeps it by hand. */
const byHand = `# Prints for the exhibit table (invented)
trials: # oldest first

  # the first coupon
  - gap: 0.20   # looked tighter
    outcome: tight
    filament: 'PLA'
  - { gap: 0.25, outcome: free, printer: 2 }

  # weekend
  - readings:
      - { feature: bar, drawn: 20, read: 20.11 } # blunt jaws
# the end
`;

describe('adding to a log', () => {
  it('keeps every comment and every value that is there', () => {
    const added = addToLog(byHand, trial, false);
    const comments = (text: string) => text.match(/# [\w() ]+$/gm)!.toSorted();
    expect(comments(added.replace(/yes: # .*/, ''))).toEqual(comments(byHand));
    expect(comments(byHand)).toHaveLength(7);
    expect(parse(added).trials.slice(0, 3)).toEqual(parse(byHand).trials);
    expect(parse(added).trials[3]).toEqual(trial);
    expect(added).toContain("gap: 0.20 # looked tighter\n    outcome: tight\n    filament: 'PLA'\n");
    const again = addToLog(added, trial, false);
    expect(comments(again.replace(/yes: # .*/g, ''))).toEqual(comments(byHand));
    expect(readLog(again)).toHaveLength(5);
  });

  it.each([
    ['nothing', ''],
    ['comments alone', '# mine\n\n# too\n'],
    ['a key without trials', 'trials:\n'],
    ['an empty list', '# mine\ntrials: [] # none yet\n'],
    ['Windows line ends', 'trials:\r\n  - gap: 0.2\r\n    outcome: tight # mine\r\n'],
    ['a list in brackets', '{ trials: [ { gap: 0.2, outcome: tight } ] } # mine\n'],
    ['JSON', '{"trials":[{"gap":0.2,"outcome":"tight"}]}'],
    ['JSON that is empty', '{}'],
  ])('to %s', (_, text) => {
    const before = readLog(text);
    const added = addToLog(text, trial, false);
    expect(readLog(added)).toEqual([...before, trial]);
    if (text.includes('# mine')) expect(added).toContain('# mine');
    if (text.includes('# too')) expect(added).toContain('# too');
    if (text.includes('\r\n')) expect(added.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    if (text.startsWith('{"') || text === '{}') expect(JSON.parse(added).trials.at(-1)).toEqual(trial);
  });

  it('says where a damaged log is damaged, and leaves it as it is', async () => {
    const damaged: [string, string, string, RegExp][] = [
      ['an outcome', byHand.replace('tight\n', 'tite\n'), 'trials[1].outcome', /^line 6: .*tight/],
      ['a misspelt key', byHand.replace('filament', 'filment'), 'trials[1].filment', /^line 7: unknown key/],
      ['a gap of a metre', byHand.replace('0.25', '25'), 'trials[2].gap', /^line 8: .* 0.02 to 2/],
      [
        'a gap without outcome',
        byHand.replace(', outcome: free', ''),
        'trials[2].outcome',
        /^line 8: is required/,
      ],
      [
        'a reading far off',
        byHand.replace('20.11', '201.1'),
        'trials[3].readings[1].read',
        /^line 12: .*read it again/,
      ],
      ['a bracket left open', byHand.replace('2 }', '2'), 'log', /is neither YAML nor JSON/],
      ['a key twice', byHand.replace("filament: 'PLA'", 'gap: 0.3'), 'log', /gives the key gap twice/],
      ['no mapping', '- gap: 0.2\n', 'log', /^line 1: must be a mapping/],
      ['another key', `${byHand}trails: []\n`, 'trails', /^line 14: unknown key/],
    ];
    for (const [name, text, parameter, rule] of damaged) {
      const [problem] = problemsOf(text, readLog);
      expect([name, problem.parameter]).toEqual([name, parameter]);
      if (problem.parameter === 'log' && String(problem.value).startsWith('line'))
        expect(problem.value).toMatch(/^line ([7-9]|1\d)$/);
      expect(problem.rule).toMatch(rule);
      const path = join(folder, 'damaged.yaml');
      writeFileSync(path, text);
      await expect(addToLogFile(path, trial)).rejects.toThrow(parameter);
      expect(readFileSync(path, 'utf8')).toBe(text);
    }
    expect(readdirSync(folder)).toEqual(['damaged.yaml']);
    rmSync(join(folder, 'damaged.yaml'));
  });

  it('loses no trial of twenty that are added at once, also through a link', async () => {
    const path = join(folder, 'log.yaml');
    writeFileSync(path, byHand);
    const link = join(folder, 'link.yaml');
    symlinkSync(path, link);
    const adding = Array.from({ length: 20 }, (_, i) =>
      addToLogFile(i % 2 ? link : path, { ...trial, notes: `n${i}` }),
    );
    const counts = await Promise.all(adding);
    expect(counts.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => 4 + i));
    const notes = (await readLogFile(path)).slice(3).map(({ notes }) => notes);
    expect(new Set(notes)).toEqual(new Set(Array.from({ length: 20 }, (_, i) => `n${i}`)));
    expect(readdirSync(folder).toSorted()).toEqual(['link.yaml', 'log.yaml']);
  });

  it('waits for a lock, says so where it is not let go, and leaves it alone', async () => {
    const path = join(folder, 'other.yaml');
    writeFileSync(`${path}.lock`, 'process 7\n');
    const work = withLock('log', path, async () => 'done', { patience: 50 });
    await expect(work).rejects.toThrow(/process 7.*delete .*other\.yaml\.lock/);
    const waiting = withLock('log', path, async () => 'done', { patience: 5000 });
    setTimeout(() => rmSync(`${path}.lock`), 100);
    expect(await waiting).toBe('done');
    const failing = withLock('log', path, async () => {
      throw new Error('no');
    });
    await expect(failing).rejects.toThrow('no');
    expect(readdirSync(folder).toSorted()).toEqual(['link.yaml', 'log.yaml']);
  });

  it('takes a log of two thousand trials', () => {
    const many = Array.from(
      { length: 2000 },
      (_, i) => `  - { gap: 0.${20 + (i % 20)}, outcome: free, date: 2026-05-30 }`,
    );
    expect(readLog(`trials:\n${many.join('\n')}\n`)).toHaveLength(2000);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { trial } from '../../bin/trial.js';
import { Refusal } from '../../lib/refusal.js';
import { readProfile } from '../../lib/spec/readSpec.js';
import { folderWith, run } from './command.js';

const entries = '0.1 fused, 0.15 fused, 0.2 tight, 0.25 free, 0.3 free, 0.35 free, 0.4 loose, 0.45 loose';
const log = `# invented\ntrials:\n${entries
  .split(', ')
  .map((entry) => entry.split(' '))
  .map(([gap, outcome]) => `  - { gap: ${gap}, outcome: ${outcome}, filament: PETG }\n`)
  .join('')}`;

describe.concurrent('trial', () => {
  it('adds entries, several at once, and says what it added', async () => {
    const folder = folderWith({});
    const words = [
      'trial',
      'log.yaml',
      'add',
      '--outcome',
      'tight',
      '--printer',
      'workshop',
      '--filament',
      'PLA',
    ];
    const more = [
      '--dryness',
      '6h',
      '--temperature',
      '210',
      '--layer',
      '0.2',
      '--date',
      '2026-05-30',
      '--notes',
      'a: b',
    ];
    const runs = await Promise.all(
      ['0.2', '0.21', '0.22'].map((gap) => run(folder, ...words, ...more, '--gap', gap, '--json')),
    );
    expect(runs.map(({ status, stderr }) => [status, stderr])).toEqual(Array(3).fill([0, '']));
    const said = runs.map(({ stdout }) => JSON.parse(stdout));
    expect(said.map(({ trials }) => trials).toSorted()).toEqual([1, 2, 3]);
    expect(said[1]).toMatchObject({
      log: 'log.yaml',
      added: { gap: 0.21, outcome: 'tight', dryness: 6, temperature: 210, date: '2026-05-30', notes: 'a: b' },
    });
    const found = await run(folder, 'trial', 'log.yaml', 'advise', '--json');
    const { trials, advice, written } = JSON.parse(found.stdout);
    expect([trials, written]).toEqual([3, null]);
    expect(advice[0]).toMatchObject({ conditions: { printer: 'workshop', filament: 'PLA', dryness: 'dry' } });
    expect(readdirSync(folder)).toEqual(['log.yaml']);
  });

  it('adds readings with and without a sheet', async () => {
    const folder = folderWith({});
    const added = await run(
      folder,
      ...['trial', 'log.json', 'add', '--reading', 'bar 20 = 20.1', '--reading', 'hole 20 = 19.9'],
    );
    expect(added.stderr).toBe('');
    expect(added.stdout).toContain('added to log.json, trial 1: ');
    const [{ date, readings }] = JSON.parse(readFileSync(join(folder, 'log.json'), 'utf8')).trials;
    expect(date).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(readings).toEqual([
      { feature: 'bar', drawn: 20, read: 20.1 },
      { feature: 'hole', drawn: 20, read: 19.9 },
    ]);
  });

  it('advises in plain words, and writes a profile that make takes, never over one that is there', async () => {
    const folder = folderWith({
      'log.yaml': log,
      'mine.yaml': '# my machine\nprinter: large # the big one\n',
    });
    const told = await run(folder, 'trial', 'log.yaml', 'advise', '--write', 'petg.yaml');
    expect(told.stderr).toBe('');
    expect(told.status).toBe(0);
    expect(told.stdout).toMatch(/fit\.gap 0\.\d\d: free \d\d %/);
    expect(told.stdout).toContain('print next');
    expect(told.stdout).toContain('common practice, no source');
    const profile = readProfile(readFileSync(join(folder, 'petg.yaml'), 'utf8'));
    expect(profile).toMatchObject({ filament: { material: 'PETG' }, fit: { gap: expect.any(Number) } });
    const kept = await run(folder, 'trial', 'log.yaml', 'advise', '--write', 'mine.yaml');
    expect([kept.status, kept.stdout]).toEqual([2, '']);
    expect(kept.stderr).toContain('write: mine.yaml: is there already');
    const forced = await run(folder, 'trial', 'log.yaml', 'advise', '--write', 'mine.yaml', '--force');
    expect(forced.status).toBe(0);
    const text = readFileSync(join(folder, 'mine.yaml'), 'utf8');
    expect(text).toContain('# my machine');
    expect(text).toMatch(/printer: large # the big one\n/);
    expect(readProfile(text)).toMatchObject({ printer: { nozzle: 0.6 }, ...profile });
  });

  it('writes nothing and stops where too little is known', async () => {
    const folder = folderWith({ 'log.yaml': log.split('\n').slice(0, 4).join('\n') });
    const { status, stdout, stderr } = await run(
      folder,
      'trial',
      'log.yaml',
      'advise',
      '--write',
      'p.yaml',
      '--json',
    );
    expect(status).toBe(1);
    expect(stderr).toMatch(/nothing written: too little is known/);
    expect(JSON.parse(stdout)).toMatchObject({ written: null, advice: [{ knows: 'too little' }] });
    expect(readdirSync(folder)).toEqual(['log.yaml']);
  });

  it('explains itself', async () => {
    const { stdout } = await run(folderWith({}), 'trial', '--help');
    for (const words of ['trial LOG add', 'trial LOG advise', '--reading', 'Examples:'])
      expect(stdout).toContain(words);
  });
});

describe('trial commands that are wrong', () => {
  it.each<[string, string, object, string[]]>([
    ['no log', '', {}, ['log']],
    ['no action', 'log.yaml', {}, ['action']],
    ['an action that is none', 'log.yaml ad', {}, ['action']],
    ['a word too many', 'log.yaml add more', { gap: '0.2', outcome: 'free' }, ['command line']],
    ['nothing to add', 'log.yaml add', {}, ['trial']],
    ['a gap without outcome', 'log.yaml add', { gap: '0.2' }, ['outcome']],
    ['an outcome without gap', 'log.yaml add', { outcome: 'free' }, ['gap']],
    [
      'several at once',
      'log.yaml add',
      { gap: 'x', outcome: 'meh', dryness: 'wet', date: 'today', layer: '9' },
      ['date', 'dryness', 'gap', 'layer', 'outcome'],
    ],
    ['a day that is none', 'log.yaml add', { gap: '0.2', outcome: 'free', date: '2026-02-30' }, ['date']],
    ['a flag given twice', 'log.yaml add', { gap: ['0.2', '0.3'], outcome: 'free' }, ['gap']],
    [
      'readings that cannot be',
      'log.yaml add',
      { reading: ['bar', 'bar 20 = 30'] },
      ['reading', 'readings[1].read'],
    ],
    ['a reading of nothing', 'log.yaml add', { reading: '' }, ['reading']],
    ['a sheet that is not there', 'log.yaml add', { outcome: 'free', sheet: 'no.json' }, ['sheet']],
    ['a flag of the other action', 'log.yaml advise', { gap: '0.2' }, ['--gap']],
    ['a log that is not there', 'no.yaml advise', {}, ['log']],
    ['a folder that is not there', 'no/log.yaml add', { gap: '0.2', outcome: 'free' }, ['log']],
    ['a damaged log', 'bad.yaml add', { gap: '0.2', outcome: 'free' }, ['trials[1].outcome']],
    ['a dryness that is none', 'log.yaml advise', { dryness: 'wet' }, ['dryness']],
    ['a profile of several conditions', 'two.yaml advise', { write: 'p.yaml' }, ['write']],
    [
      'a profile that is none',
      'log.yaml advise',
      { filament: 'PETG', write: 'bad.yaml', force: true },
      ['profile.trials'],
    ],
    ['--force alone', 'log.yaml advise', { force: true }, ['force']],
  ])('%s', async (_, words, flags, parameters) => {
    const files = {
      'log.yaml': log,
      'bad.yaml': 'trials:\n  - { gap: 0.2, outcome: fre }\n',
      'two.yaml': log.replace('PETG', 'PLA'),
    };
    const folder = folderWith(files);
    const [path, ...rest] = words.split(' ');
    const within = (name: string) => (name === '' ? [] : [join(folder, name)]);
    const write = 'write' in flags ? { write: join(folder, String(flags.write)) } : {};
    const refusal = await trial({ _: ['trial', ...within(path), ...rest], ...flags, ...write }).catch(
      (e) => e,
    );
    expect(refusal).toBeInstanceOf(Refusal);
    const { problems } = refusal as Refusal;
    expect(problems.map(({ parameter }) => parameter).toSorted()).toEqual(parameters);
    for (const [name, text] of Object.entries(files))
      expect(readFileSync(join(folder, name), 'utf8')).toBe(text);
    expect(readdirSync(folder).length).toBe(3);
  });

  it('are said on one line each, with status 2', async () => {
    const folder = folderWith({ 'log.yaml': log });
    const { status, stdout, stderr } = await run(
      folder,
      'trial',
      'log.yaml',
      'add',
      '--gap',
      '9',
      '--outcom',
      'free',
    );
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toBe(
      'cogweave: --outcom: flag: is not known to this command; nearest that works: --outcome\n',
    );
  });
});

describe.concurrent('trouble', () => {
  it('names causes and numbers to change', async () => {
    const one = await run(folderWith({}), 'trouble', 'turns then binds');
    expect(one.stdout).toContain('change: ');
    expect(one.stdout).toContain('Common practice, no source');
    const all = await run(folderWith({}), 'trouble', '--json');
    expect(JSON.parse(all.stdout).troubles).toHaveLength(8);
  });
});

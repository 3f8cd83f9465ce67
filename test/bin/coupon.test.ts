import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, run, spinner } from './command.js';

describe.concurrent('coupon', () => {
  it('writes all files, and trials read its sheet', async () => {
    const folder = folderWith({ 'spinner.yaml': spinner });
    const made = await run(folder, 'coupon', 'spinner.yaml', '--out', 'out', '--gaps', '0.2,0.3', '--json');
    expect(made.status, made.stderr).toBe(0);
    const { files, sheet } = JSON.parse(made.stdout);
    expect(files).toHaveLength(5);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(
      ['3mf', 'sheet.html', 'sheet.json', 'stl', 'svg'].map((ending) => `spinner-coupon.${ending}`),
    );
    const path = join(folder, 'out', 'spinner-coupon.sheet.json');
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(sheet);
    expect(sheet.stations.map(({ gap }: { gap: { asked: number } }) => gap.asked)).toEqual([0.2, 0.3]);
    const add = (...words: string[]) => run(folder, 'trial', 'log.yaml', 'add', '--sheet', path, ...words);
    const readings = ['length bar = 30.1', 'width bar = 16.1', 'hole = 9.9'].flatMap((r) => ['--reading', r]);
    const added = await add('--gap', '0.3', '--outcome', 'free', '--json', ...readings);
    expect(added.status, added.stderr).toBe(0);
    expect(JSON.parse(added.stdout).added).toMatchObject({
      gap: 0.3,
      readings: [{ drawn: 30 }, { drawn: 16 }, { feature: 'hole', drawn: 10, read: 9.9 }],
    });
    // A coupon has many gaps: its sheet does not say which one came out so.
    expect(await add('--outcome', 'free')).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/gap: missing/),
    });
    const next = await run(
      folder,
      'coupon',
      '--out',
      'next',
      '--log',
      'log.yaml',
      '--format',
      'stl',
      '--json',
    );
    expect(next.status, next.stderr).toBe(0);
    expect(JSON.parse(next.stdout).sheet.stations.length).toBeGreaterThan(1);
  }, 60_000);

  it('refuses what is wrong in one line, and writes nothing', async () => {
    const folder = folderWith({ 'spinner.yaml': spinner });
    const wrong: [string[], RegExp][] = [
      [['spinner.yaml'], /^cogweave: out: missing/],
      [['spinner.yaml', '--out', 'out', '--gaps', '0.1:0.9:0.01'], /^cogweave: gaps: .*0\.10:0\.90:0\.08\n$/],
      [['spinner.yaml', '--out', 'out', '--gaps', '0.2,1.3'], /^cogweave: gaps: 1\.30: .*1\.12\n$/],
      [['none.yaml', '--out', 'out'], /^cogweave: file: none\.yaml: cannot be read/],
      [['--out', 'out', '--flow', 'fast'], /^cogweave: flow: fast/],
      [['--out', 'out', '--gap', '0.2'], /^cogweave: --gap: .*--gaps\n$/],
      [['--out', 'out', '--log', 'none.yaml'], /^cogweave: log: none\.yaml/],
      [['--out', 'out', '--name', 'a/b'], /^cogweave: name: a\/b/],
    ];
    for (const [words, said] of wrong) {
      const { status, stdout, stderr } = await run(folder, 'coupon', ...words);
      expect({ status, stdout }, words.join(' ')).toEqual({ status: 2, stdout: '' });
      expect(stderr).toMatch(said);
    }
    expect(readdirSync(folder)).toEqual(['spinner.yaml']);
  }, 60_000);
});

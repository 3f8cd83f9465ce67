import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { paintFor } from '../../bin/colours.js';
import { summaryText } from '../../lib/write/summary.js';
import { inventedSheet } from '../write/sheets.js';
import { run } from './command.js';

describe.concurrent('help', () => {
  it('explains every command and every flag, with examples, within 80 columns', async () => {
    const whole = await run('.', '--help');
    const commands = [...whole.stdout.matchAll(/^ {2}cogweave (\w+)/gm)].map(([, name]) => name);
    const named = [...new Set(commands)].filter((name) => whole.stdout.includes(`  cogweave ${name} `));
    for (const name of [
      'make',
      'inspect',
      'batch',
      'plan',
      'coupon',
      'trial',
      'trouble',
      'schema',
      'completion',
    ])
      expect(named).toContain(name);
    for (const { name, stdout, status } of [
      { name: 'cogweave', ...whole },
      ...(await Promise.all(named.map(async (name) => ({ name, ...(await run('.', name, '--help')) })))),
    ]) {
      expect(status, name).toBe(0);
      expect(stdout, name).toMatch(/^Examples:\n {2}cogweave /m);
      for (const [, flag, said] of stdout.split('Examples:')[0].matchAll(/^ {2,6}(--[\w-]+) *(.*)$/gm))
        expect(said, `${name} ${flag}`).toMatch(/\w{3}/);
      const widest = Math.max(...stdout.split('\n').map((line) => line.length));
      if (!['plan', 'trouble', 'trial'].includes(name)) expect(widest, name).toBeLessThanOrEqual(80);
    }
  }, 30_000);

  it('completes commands and flags in a shell', async () => {
    const script = await run('.', 'completion');
    expect(script).toMatchObject({ status: 0, stderr: '' });
    expect(script.stdout).toMatch(/^complete .*cogweave$|^compdef .*cogweave$/m);
    const flags = await run('.', '--get-yargs-completions', 'cogweave', 'make', '--');
    expect(flags.stdout.split('\n')).toEqual(expect.arrayContaining(['--out', '--picture', '--strict']));
    expect((await run('.', 'completion', 'more')).status).toBe(2);
  });
});

describe('colours', () => {
  const terminal = (colours: boolean) =>
    ({ isTTY: true, hasColors: () => colours }) as unknown as NodeJS.WriteStream;
  const pipe = {} as NodeJS.WriteStream;
  const coloured = (stream: NodeJS.WriteStream, environment: NodeJS.ProcessEnv) =>
    paintFor(stream, environment)('fails', 'FAILS') !== 'FAILS';

  // no-color.org; FORCE_COLOR as Node has it.
  it.each([
    ['a terminal', terminal(true), {}, true],
    ['a terminal without colours', terminal(false), {}, false],
    ['a pipe', pipe, {}, false],
    ['NO_COLOR', terminal(true), { NO_COLOR: '1' }, false],
    ['an empty NO_COLOR', terminal(true), { NO_COLOR: '' }, true],
    ['FORCE_COLOR', pipe, { FORCE_COLOR: '1' }, true],
    ['FORCE_COLOR=0', terminal(true), { FORCE_COLOR: '0' }, false],
    ['both', pipe, { FORCE_COLOR: '1', NO_COLOR: '1' }, true],
  ])('%s', (_, stream, environment, expected) => {
    expect(coloured(stream, environment)).toBe(expected);
  });

  it('say nothing that the words do not say', () => {
    const sheet = inventedSheet();
    const painted = summaryText(sheet, paintFor(pipe, { FORCE_COLOR: '1' }));
    expect(painted).not.toBe(summaryText(sheet));
    expect(stripVTControlCharacters(painted)).toBe(summaryText(sheet));
  });
});

import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, run, spinner } from './command.js';

/** Runs `make` on a file and expects it refused: exit 2, plain lines on stderr, nothing else anywhere. */
async function refused(content: string | Uint8Array, parameters: string[], ...words: string[]) {
  const folder = folderWith({ 'set.yaml': content });
  await expectRefused(folder, parameters, 'make', 'set.yaml', '--out', 'out', ...words);
}

async function expectRefused(folder: string, parameters: string[], ...words: string[]) {
  const before = readdirSync(folder, { recursive: true });
  const { status, stdout, stderr } = await run(folder, ...words);
  const lines = stderr.trimEnd().split('\n');
  expect(lines.map((line) => /^cogweave: ([^:]+): /.exec(line)?.[1])).toEqual(parameters);
  expect(stderr).not.toMatch(/^\s+at |\.js:\d|Error:|internal/m);
  expect(stdout).toBe('');
  expect(status).toBe(2);
  expect(readdirSync(folder, { recursive: true })).toEqual(before);
}

const change = (from: string | RegExp, to: string) => spinner.replace(from, to);

it('is one JSON document where that is asked for, a code with each problem', async () => {
  const folder = folderWith({ 'set.yaml': `${change('1.5', '-1.5')}colour: red\n` });
  const { status, stdout, stderr } = await run(folder, 'inspect', 'set.yaml', '--json');
  const { problems } = JSON.parse(stdout);
  expect(problems).toEqual([
    {
      code: 'out-of-range',
      parameter: 'module',
      value: -1.5,
      rule: expect.any(String),
      nearest: expect.any(Array),
    },
    {
      code: 'unknown-key',
      parameter: 'colour',
      value: 'red',
      rule: 'unknown key',
      nearest: expect.any(Array),
    },
  ]);
  expect(stderr.split('\n')).toHaveLength(3);
  expect(status).toBe(2);
});

describe.concurrent('what is wrong with the file', () => {
  it.each<[string, string | Uint8Array, string[]]>([
    ['an unknown key', `${spinner}colour: red\n`, ['colour']],
    ['an unknown key further in', `${spinner}fit: { gapp: 0.2 }\n`, ['fit.gapp']],
    ['a misspelt key', change('module:', 'modul:'), ['modul']],
    ['a word for a number', change('1.5', 'thick'), ['module']],
    ['a quoted number', change('1.5', '"1.5"'), ['module']],
    ['a number for a mapping', change('{ teeth: 18 }', '18'), ['sun']],
    ['a list for a mapping', `${spinner}fit: [0.2]\n`, ['fit']],
    ['nothing for a number', change('1.5', ''), ['module']],
    ['a negative number', change('1.5', '-1.5'), ['module']],
    ['an absurd number', change('1.5', '1e300'), ['module']],
    ['no number', change('1.5', '.nan'), ['module']],
    ['an infinite number', change('1.5', '.inf'), ['module']],
    ['ten thousand teeth', change('teeth: 18 }', 'teeth: 10000 }'), ['sun.teeth']],
    ['ten thousand teeth everywhere', change(/teeth: 18/g, 'teeth: 10000'), ['sun.teeth', 'planets.teeth']],
    ['half a tooth', change('teeth: 18 }', 'teeth: 18.5 }'), ['sun.teeth']],
    ['a kind that comes later', change('planetary', 'worm'), ['kind']],
    ['a set as large as a house', change('1.5', '20').replace(/teeth: 18/g, 'teeth: 100'), ['module']],
    [
      'many things at once',
      'kind: planetary\nmodule: -3\nfaceWidth: x\nsun: { teeth: 10000 }\nplanets: { teeth: 3 }\nx: 1\n',
      ['module', 'faceWidth', 'sun.teeth', 'planets.teeth', 'planets.count', 'x'],
    ],
    ['a name that leaves the folder', change('name: spinner', 'name: ../spinner'), ['name']],
    ['an absolute name', change('name: spinner', 'name: /tmp/spinner'), ['name']],
    ['prototype keys', `${spinner}__proto__: { polluted: 1 }\n`, ['__proto__']],
    ['nothing', '', ['file']],
    ['blanks', ' \n\n', ['file']],
    ['binary data', Uint8Array.from({ length: 512 }, (_, i) => i % 256), ['file']],
    ['other than UTF-8', Uint8Array.from(Buffer.from('name: Übung\n', 'latin1')), ['file']],
    ['NUL bytes', `${spinner}\0\0`, ['file']],
    ['an open bracket', 'sun: {', ['file']],
    ['two documents', `${spinner}---\n${spinner}`, ['file']],
    ['a key twice', `${spinner}module: 2\n`, ['file']],
    ['over a megabyte', `${spinner}# ${'x'.repeat(1_000_000)}`, ['file']],
    ['a hundred thousand brackets', '['.repeat(100_000), ['file']],
    ['plain text', 'Dear table, please spin.', ['file']],
  ])('%s: exit 2, a line for each problem, nothing written', async (_, content, parameters) => {
    await refused(content, parameters);
  });

  it('says parameter, value, rule and what would work', async () => {
    const folder = folderWith({ 'set.yaml': change('teeth: 18 }', 'teeth: 10000 }') });
    expect((await run(folder, 'inspect', 'set.yaml')).stderr).toBe(
      // 400 is in range, but 400 + 436 teeth leave no whole number of places for 3 planets.
      'cogweave: sun.teeth: 10000: must be a whole number from 5 to 400; nearest that works: 399\n',
    );
  });

  it('lets no control characters through to the terminal', async () => {
    const folder = folderWith({ 'set.yaml': `${spinner}"\\e[31mred": "\\e]0;title\\a"\n` });
    const { stderr, status } = await run(folder, 'inspect', 'set.yaml');
    expect(status).toBe(2);
    expect(stderr).not.toMatch(/(?!\n)\p{Cc}/u);
  });
});

describe.concurrent('what is wrong with the command line', () => {
  it.each<[string, string[], string[]]>([
    ['no command', [], ['command']],
    ['an unknown command', ['mkae'], ['command']],
    ['no file', ['make', '--out', 'out'], ['file']],
    ['no out', ['make', 'set.yaml'], ['out']],
    ['out without a folder', ['make', 'set.yaml', '--out'], ['out']],
    ['an empty out', ['make', 'set.yaml', '--out='], ['out']],
    ['out twice', ['make', 'set.yaml', '--out', 'a', '--out', 'b'], ['out']],
    ['an unknown flag', ['make', 'set.yaml', '--out', 'out', '--forse'], ['--forse']],
    ['an unknown short flag', ['inspect', 'set.yaml', '-v'], ['-v']],
    ['a flag of another command', ['inspect', 'set.yaml', '--out', 'out'], ['--out']],
    ['a word too many', ['make', 'set.yaml', 'more', '--out', 'out'], ['command line']],
    ['an unknown format', ['make', 'set.yaml', '--out', 'out', '--format', 'stl,obj'], ['format']],
    ['an empty format', ['make', 'set.yaml', '--out', 'out', '--format', ','], ['format', 'format']],
    ['a tolerance in words', ['make', 'set.yaml', '--out', 'out', '--tolerance', 'fine'], ['tolerance']],
    ['a tolerance of 0', ['inspect', 'set.yaml', '--tolerance', '0'], ['tolerance']],
    ['a negative tolerance', ['inspect', 'set.yaml', '--tolerance', '-0.01'], ['tolerance']],
    ['a tolerance with a comma', ['inspect', 'set.yaml', '--tolerance', '0,01'], ['tolerance']],
    ['an infinite tolerance', ['inspect', 'set.yaml', '--tolerance', 'Infinity'], ['tolerance']],
    ['a missing file', ['make', 'nothing.yaml', '--out', 'out'], ['file']],
    ['a file below a file', ['make', 'set.yaml/x', '--out', 'out'], ['file']],
    ['a folder for a file', ['make', '.', '--out', 'out'], ['file']],
    ['an empty file name', ['make', '', '--out', 'out'], ['file']],
    ['a file for a folder', ['make', 'set.yaml', '--out', 'set.yaml'], ['out']],
    ['a folder below a file', ['make', 'set.yaml', '--out', 'set.yaml/out/deep'], ['out']],
    ['a device for a folder', ['make', 'set.yaml', '--out', '/dev/null'], ['out']],
    ['words after schema', ['schema', 'set.yaml'], ['command line']],
  ])('%s: exit 2, one line, nothing written', async (_, words, parameters) => {
    await expectRefused(folderWith({ 'set.yaml': spinner }), parameters, ...words);
  });

  it.skipIf(process.platform !== 'linux').each(['/proc', '/proc/cogweave', '/proc/cogweave/deep'])(
    '%s, which even root cannot write to: exit 2, one line',
    async (out) => {
      await expectRefused(folderWith({ 'set.yaml': spinner }), ['out'], 'make', 'set.yaml', '--out', out);
      if (out !== '/proc') expect(existsSync(out)).toBe(false);
    },
  );

  it('a folder where a result should go: exit 2, and everything stays as it was', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    mkdirSync(join(folder, 'out', 'spinner.svg'), { recursive: true });
    await expectRefused(folder, ['out'], 'make', 'set.yaml', '--out', 'out');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guideAt } from '../../lib/spec/guide.js';
import { isName, nameFault, nameWith, nearestName } from '../../lib/spec/name.js';
import { isPlain, visible } from '../../lib/visible.js';
import { soleProblem, spinner } from './table.js';

/** Names that Windows keeps for devices: its documentation of file names, from memory. */
const devices = [
  'CON',
  'PRN',
  'AUX',
  'NUL',
  ...['COM', 'LPT'].flatMap((port) => [...'0123456789¹²³'].map((n) => port + n)),
];
const hostile: [what: string, name: string, near: string | undefined][] = [
  ['a device', 'CON', 'CON-set'],
  ['a device in other letters', 'cOn', 'cOn-set'],
  ['a device with an ending', 'aux.txt', 'aux-set.txt'],
  ['a device with two endings', 'nul.tar.gz', 'nul-set.tar.gz'],
  ['a device with spaces before the ending', 'LPT1 .x', 'LPT1-set.x'],
  ['a port with an ending', 'LPT9.foo', 'LPT9-set.foo'],
  ['a port with a superscript digit', 'com²', undefined],
  ['a device in full-width letters', 'ｃｏｎ', undefined],
  ['a flag', '-rf', 'rf'],
  ['a long flag', '--help', 'help'],
  ['a trailing dot', 'spinner.', 'spinner'],
  ['a trailing space', 'spinner ', 'spinner'],
  ['a leading space', ' spinner', 'spinner'],
  ['an escape sequence', '\u001b[31mred', '31mred'],
  ['a second kind of escape', 'a\u009b31m', 'a-31m'],
  ['a bell', 'con\u0007trol', 'con-trol'],
  ['a change of direction', 'spin\u202eexe.ner', 'spin-exe.ner'],
  ['a mark of direction', 'spin\u200fner', 'spin-ner'],
  ['an isolate', '\u2066spinner\u2069', 'spinner-'],
  ['a zero-width space', 'spin\u200bner', 'spin-ner'],
  ['a byte order mark', '\ufeffspinner', 'spinner'],
  ['a letter without a shape', 'spin\u3164ner', 'spinner'],
  ['a mark without a shape', 'spinner\ufe0f', 'spinner'],
  ['a mark that joins what stands before', '\u0301spinner', 'spinner'],
  ['more than 100 letters', 'x'.repeat(101), 'x'.repeat(100)],
  ['more than 200 bytes', '歯'.repeat(67), '歯'.repeat(66)],
  ['a path', '../spinner', 'spinner'],
  ['nothing', '', undefined],
];

describe('names', () => {
  it.each(devices)('%s is refused with any ending and in any letters', (device) => {
    for (const name of [device, device.toLowerCase(), `${device}.stl`, `${device}.a.b`, `${device} .x`])
      expect(isName(name), name).toBe(false);
    // Only the whole stem is a device.
    for (const name of [`${device}x`, `x${device}`, `${device}-1`, `x.${device}`])
      expect(isName(name), name).toBe(true);
  });

  it.each(hostile)('%s is refused: %j', (_, name, near) => {
    expect(isName(name)).toBe(false);
    const problem = soleProblem({ ...spinner(), name });
    expect(problem).toMatchObject({ parameter: 'name', value: name });
    const [offer] = problem.nearest as string[];
    expect(isName(offer)).toBe(true);
    if (near !== undefined) expect(offer).toBe(near);
  });

  it.each([
    'spinner',
    'Drehtisch Übung 3',
    'table-spinner_gap-0.25',
    '歯車',
    'नमस्ते',
    'console',
    '_x',
    'x-',
    '2024.05',
  ])('%s is one', (name) => {
    expect(isName(name)).toBe(true);
    expect(nearestName(name)).toBe(name);
    expect(nameFault(name)).toBeUndefined();
  });

  it('are said by the schema’s pattern too', () => {
    const { pattern } = guideAt(['name'], spinner())!;
    for (const name of ['CON', 'aux.txt', '-rf', 'x.', ' x'])
      expect(new RegExp(pattern!, 'u').test(name)).toBe(false);
    expect(new RegExp(pattern!, 'u').test('spinner')).toBe(true);
  });

  it('are found for any text, and stay within an ending’s room', () => {
    const words = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom(...devices, '-', '歯'.repeat(99)),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(words, { minLength: 1 }), (parts) => {
        const name = nearestName(parts.join('.'));
        expect(isName(name), name).toBe(true);
        expect(isPlain(name)).toBe(true);
        const longer = nameWith(name, '-coupon');
        expect(isName(longer)).toBe(true);
        expect(longer.endsWith('-coupon')).toBe(true);
      }),
    );
  });
});

describe('text that is shown', () => {
  it('writes out what cannot be seen, and leaves everything else', () => {
    expect(visible('\u001b[2J\u009b1m a\u202eb\u200b\u2028\u00ad\ufeff\u{e0041}')).toBe(
      '\\u001b[2J\\u009b1m a\\u202eb\\u200b\\u2028\\u00ad\\ufeff\\udb40\\udc41',
    );
    for (const plain of ['Größe 3 × 4 mm²', '歯車 – „x“', 'नमस्ते', 'a\\u202eb'])
      expect(visible(plain)).toBe(plain);
  });

  it('means the same in JSON', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const shown = visible(JSON.stringify({ text }));
        expect(isPlain(shown)).toBe(true);
        expect(JSON.parse(shown)).toEqual({ text });
      }),
    );
  });
});

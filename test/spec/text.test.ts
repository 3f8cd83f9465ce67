import { describe, expect, it } from 'vitest';
import { readSpec } from '../../lib/spec/readSpec.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { planetary } from '../sets.js';
import { problemsOf, soleProblem, spinner } from './table.js';

const yaml = `kind: planetary
module: 1.5
faceWidth: 20
sun: { teeth: 15 }
planets: { teeth: 15, count: 5 }
`;

describe('reading text', () => {
  it('reads YAML, JSON and a byte order mark alike', () => {
    const spec = resolveSpec(spinner(), 'table');
    expect(readSpec(yaml, 'table')).toEqual(spec);
    expect(readSpec(JSON.stringify(spinner()), 'table')).toEqual(spec);
    expect(readSpec(`\ufeff${yaml}`, 'table')).toEqual(spec);
    expect(readSpec(yaml.replaceAll('\n', '\r\n'), 'table')).toEqual(spec);
  });

  it('follows a few references', () => {
    const text =
      'kind: planetary\nmodule: 1.5\nfaceWidth: 20\nsun: { teeth: &z 15 }\nplanets: { teeth: *z, count: 5 }';
    expect(planetary(readSpec(text)).planets.teeth).toBe(15);
  });

  it.each([
    ['empty', '', /is empty/],
    ['blank', ' \n\t\n', /is empty/],
    ['only a comment', '# nothing yet\n', /is empty/],
    ['binary', 'PK\u0003\u0004\u0000\u0000', /is not text/],
    ['NUL', `${yaml}\u0000`, /is not text/],
    ['lone surrogate', `name: "\ud800"\n${yaml}`, /is not text/],
    ['replacement characters', `name: a\ufffdb\n${yaml}`, /is not text/],
    ['over a megabyte', `${yaml}# ${'x'.repeat(1_000_000)}`, /more than 1 MB/],
    ['a number', '42', /must be a mapping/],
    ['a list', '- 1\n- 2\n', /must be a mapping/],
    ['null', '~', /must be a mapping/],
    ['two documents', `${yaml}---\n${yaml}`, /must hold one document/],
    ['a key twice', `${yaml}module: 2\n`, /gives the key module twice/],
    ['a key twice in JSON', '{"module": 1, "module": 2}', /gives the key module twice/],
    ['a key twice further in', `${yaml}fit: { gap: 0.2, gap: 0.3 }\n`, /gives the key gap twice/],
    ['a key that is a list', `${yaml}? [1, 2]\n: 3\n`, /a key that is no word/],
    ['an open bracket', 'sun: [', /neither YAML nor JSON/],
    ['an unknown tag', `${yaml}name: !exec x\n`, /neither YAML nor JSON/],
    ['a reference to nothing', 'module: *nothing\n', /refer to themselves, to nothing/],
    ['a reference to itself', 'sun: &a { bore: *a }\n', /nested more than 16 levels/],
    ['many references', `a: &a 1\nb: [${Array(30).fill('*a').join(', ')}]\n`, /more than 20 references/],
    ['brackets 100 000 deep', '['.repeat(100_000), /nested more than 16 levels/],
    ['mappings 100 000 deep', '{a: '.repeat(100_000), /nested more than 16 levels/],
    ['dashes 100 000 deep', '- '.repeat(100_000), /nested more than 16 levels/],
    [
      'indented 1000 deep',
      Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      /indented/,
    ],
    [
      'a hundred thousand keys',
      Array.from({ length: 100_000 }, (_, i) => `k${i}: 1`).join('\n'),
      /too many entries/,
    ],
  ])('refuses text that is %s', (_, text, says) => {
    const problem = soleProblem(text, readSpec);
    expect(problem.rule).toMatch(says);
  });

  it('refuses growth by references to references', () => {
    const levels = ['a0: &a0 [x, x, x]'];
    for (let i = 1; i < 10; i++) levels.push(`a${i}: &a${i} [*a${i - 1}, *a${i - 1}]`);
    expect(soleProblem(levels.join('\n'), readSpec).parameter).toBe('file');
  });

  it('refuses keys that reach into prototypes, by name, and changes no prototype', () => {
    const text = '{"__proto__": {"polluted": 1}, "sun": {"constructor": 1, "prototype": 2}}';
    expect(problemsOf(text, readSpec).map(({ parameter }) => parameter)).toEqual([
      '__proto__',
      'sun.constructor',
      'sun.prototype',
    ]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it.each(['.nan', '.inf', '-.inf', '1e999'])('refuses %s for a number', (value) => {
    expect(soleProblem(yaml.replace('module: 1.5', `module: ${value}`), readSpec).parameter).toBe('module');
  });
});

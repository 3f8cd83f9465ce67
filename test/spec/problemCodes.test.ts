import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { refuse } from '../../lib/refusal.js';
import { problemCodes } from './problemCodes.js';

const root = new URL('../../', import.meta.url);
const sourceOf = (folder: string) =>
  readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('problemCode.ts'))
    .map((name) => readFileSync(new URL(`${folder}/${name}`, root), 'utf8'))
    .join('\n');
const sources = sourceOf('lib') + sourceOf('bin');
const declared = readFileSync(new URL('lib/problemCode.ts', root), 'utf8').match(/\| '/g)!;
/** Given by `codeOfNumber` alone. */
const ofNumbers = ['not-a-number', 'not-whole'];

describe('codes of problems', () => {
  it('each has one line that says what it means', () => {
    expect(problemCodes.size).toBe(declared.length);
    expect(new Set(problemCodes.values()).size).toBe(declared.length);
  });

  it.each([...problemCodes.keys()])('%s is short, and some problem carries it', (code) => {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(code.length).toBeLessThan(26);
    if (!ofNumbers.includes(code)) expect(sources).toContain(`'${code}'`);
  });

  it('the first problem gives the error its code', () => {
    const refused = () => refuse('no-room', 'sun.bore', 9, 'finds no room', ['none']);
    expect(refused).toThrow(expect.objectContaining({ code: 'no-room', parameter: 'sun.bore' }));
  });
});

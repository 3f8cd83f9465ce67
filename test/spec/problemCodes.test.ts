import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemCodes } from '../../lib/problemCode.js';
import { refuse } from '../../lib/refusal.js';

const root = new URL('../../', import.meta.url);
const sourceOf = (folder: string) =>
  readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(`${folder}/${name}`, root), 'utf8'))
    .join('\n');
const sources = sourceOf('lib') + sourceOf('bin');

describe('codes of problems', () => {
  it.each(Object.entries(problemCodes))(
    '%s is short, has a meaning, and some problem carries it',
    (code, means) => {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(code.length).toBeLessThan(26);
      expect(means).toMatch(/^[A-Z].*\.$/);
      // Once more than where it is declared.
      expect(sources.split(`'${code}'`).length - 1).toBeGreaterThan(code.includes('-') ? 1 : 0);
    },
  );

  it('have a meaning each', () => {
    const meanings = Object.values(problemCodes);
    expect(new Set(meanings).size).toBe(meanings.length);
  });

  it('the first problem gives the error its code', () => {
    const refused = () => refuse('no-room', 'sun.bore', 9, 'finds no room', ['none']);
    expect(refused).toThrow(expect.objectContaining({ code: 'no-room', parameter: 'sun.bore' }));
  });
});

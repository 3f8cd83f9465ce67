import { describe, expect, it } from 'vitest';
import { aligned, sidesOf } from '../../lib/write/aligned.js';

describe('aligned', () => {
  it('counts places on a terminal: wide letters two, accents and colours none', () => {
    // 齿 and 轮 are wide (Unicode, East Asian Width); é is here an e and a combining accent.
    const rows = [
      ['齿轮', '1'],
      ['e\u0301te\u0301', '22'],
      ['\u001b[31mred\u001b[39m', '333'],
      ['four', '4444'],
    ];
    expect(aligned(rows, ['left', 'right'])).toEqual([
      '齿轮     1',
      'e\u0301te\u0301     22',
      '\u001b[31mred\u001b[39m    333',
      'four  4444',
    ]);
  });

  it('leaves no blanks at the end, and takes rows of any length', () => {
    expect(aligned([['a', 'b'], ['longer']], 'left')).toEqual(['a       b', 'longer']);
    expect(aligned([], 'left')).toEqual([]);
  });

  it('ends figures at one place', () => {
    const rows = [
      ['gear', 'teeth'],
      ['sun', '-1.5'],
    ];
    expect(aligned(rows, sidesOf(rows))).toEqual(['gear  teeth', 'sun    -1.5']);
  });
});

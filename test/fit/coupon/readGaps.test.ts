import { describe, expect, it } from 'vitest';
import { readGaps } from '../../../lib/fit/coupon/readGaps.js';
import { Refusal } from '../../../lib/refusal.js';

describe('gaps of a coupon', () => {
  it('are read as a range or a list, ascending, free of rounding', () => {
    expect(readGaps('0.10:0.40:0.05')).toEqual([0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4]);
    expect(readGaps('0.1:0.35:0.1')).toEqual([0.1, 0.2, 0.3]);
    expect(readGaps(' .3, 0.15 ,0.2')).toEqual([0.15, 0.2, 0.3]);
    expect(readGaps('0.02:0.13:0.01')).toHaveLength(12);
  });

  it('are refused with gaps that work', () => {
    const wrong = ['', 'abc', '0.1', '0.1:0.2', '0.1:0.4:0', '0.1:0.4:0.001', '0.4:0.1:0.05', '0.2:0.2:0.1'];
    wrong.push(
      '0.1,0.1',
      '0.105,0.2',
      '0.001,0.3',
      '1.9,2.5',
      '0.1:0.2:0.5',
      '-0.1,0.2',
      '1e-1,0.2',
      '0.1,,0.3',
    );
    wrong.push(
      '0.01:0.5:0.005',
      '3:4:0.5',
      '2:2:0.1',
      '1.99:2.5:0.001',
      '5,6',
      '0.1:0.1001:0.00001',
      Array.from({ length: 13 }, (_, i) => 0.1 + i / 100).join(','),
    );
    for (const text of wrong) {
      const refusal = refusalOf(text);
      expect(refusal, text).toMatchObject({ parameter: 'gaps', value: text });
      expect(refusal.nearest.length, text).toBeGreaterThan(0);
      for (const offer of refusal.nearest) expect(readGaps(String(offer)).length, text).toBeGreaterThan(1);
    }
  });

  it.each([
    ['abc', /must be FIRST:LAST:STEP or a list/, ['0.10:0.40:0.05', '0.15,0.2,0.3']],
    ['0.4:0.1:0.05', /the last gap must be more than the first/, ['0.10:0.40:0.05']],
    ['0.1:0.4:0.02', /makes more than 12 stations/, ['0.10:0.40:0.03']],
    ['0.1:0.2:0.5', /makes fewer than 2 stations: the step is longer than the way/, ['0.10:0.20:0.10']],
    ['0.105,0.2', /must be whole hundredths of a millimetre/, ['0.11,0.20']],
    ['0.001,0.3', /must be whole hundredths/, ['0.02,0.30']],
    ['0.1,0.1', /has a gap twice/, ['0.10,0.15']],
    ['0.3', /must be 2 gaps at least/, ['0.30,0.35']],
  ])('%s: the rule and what is nearest', (text, rule, nearest) => {
    expect(refusalOf(text).rule).toMatch(rule);
    expect(refusalOf(text).nearest).toEqual(nearest);
  });
});

function refusalOf(text: string): Refusal {
  try {
    readGaps(text);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error(`${text} is read`);
}

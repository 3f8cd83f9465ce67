import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { soleProblem } from './table.js';

const set = {
  kind: 'planetary',
  module: 1.5,
  faceWidth: 12,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 5 },
};
const pair = { kind: 'pair', module: 1.5, faceWidth: 8, pinion: { teeth: 22 } };

describe('the tolerance', () => {
  it.each<[string, object, number, RegExp]>([
    ['of a set', { ...set, fit: { gap: 0.2 }, tolerance: 0.2 }, 0.08, /0\.4 × fit\.gap of 0\.2 mm/],
    [
      'of a ring pair',
      { ...pair, wheel: { internal: true, teeth: 27 }, fit: { gap: 0.1 }, tolerance: 0.1 },
      0.04,
      /fit\.gap/,
    ],
    [
      'of a rack',
      { kind: 'rack', module: 1, faceWidth: 5, pinion: { teeth: 15 }, bar: { teeth: 8 }, tolerance: 0.15 },
      0.1,
      /fit\.gap of 0\.25/,
    ],
    ['where lips are nearer', { ...set, lips: { gap: 0.1 }, tolerance: 0.05 }, 0.04, /lips\.gap/],
    ['where a carrier is', { ...set, carrier: { gap: 0.12 }, tolerance: 0.05 }, 0.048, /carrier\.gap/],
    [
      'where its plate is',
      { ...set, carrier: { axialGap: 1 }, printer: { layer: 0.1 }, tolerance: 0.05 },
      0.04,
      /carrier\.axialGap of 0\.1 mm/,
    ],
    [
      'where walls are drawn further out',
      { ...set, printer: { growth: -0.08 }, tolerance: 0.05 },
      0.036,
      /fit\.gap as drawn of 0\.09 mm/,
    ],
  ])('%s is small against the gap, or refused with one that works', (_, file, nearest, rule) => {
    expect(soleProblem(file)).toMatchObject({
      parameter: 'tolerance',
      nearest: [nearest],
      rule: expect.stringMatching(rule),
    });
    expect(resolveSpec({ ...file, tolerance: nearest }).tolerance).toBe(nearest);
  });

  it('that is left out is as fine as the gap asks, and one gear by itself has none', () => {
    expect(resolveSpec({ ...set, fit: { gap: 0.02 } }).tolerance).toBe(0.008);
    expect(resolveSpec(set).tolerance).toBe(0.01);
    const gear = { kind: 'gear', module: 1.5, faceWidth: 3, gear: { teeth: 8 }, tolerance: 0.2 };
    expect(resolveSpec(gear).tolerance).toBe(0.2);
  });
});

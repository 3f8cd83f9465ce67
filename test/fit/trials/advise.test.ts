import { describe, expect, it } from 'vitest';
import { type Advice, advise } from '../../../lib/fit/trials/advise.js';
import type { Trial } from '../../../lib/fit/trials/trialSchema.js';
import { troubles } from '../../../lib/fit/troubles.js';
import { readProfile } from '../../../lib/spec/readSpec.js';

/** Trials from words: `0.2 tight`. */
const trialsOf = (words: string, more: Partial<Trial> = {}): Trial[] =>
  words.split(', ').map((word) => {
    const [gap, outcome] = word.split(' ');
    return { gap: Number(gap), outcome: outcome as Trial['outcome'], ...more };
  });
const sole = (trials: readonly Trial[], ...rest: [Parameters<typeof advise>[1]?]): Advice => {
  const advice = advise(trials, ...rest);
  expect(advice).toHaveLength(1);
  return advice[0];
};

const eight = '0.1 fused, 0.15 fused, 0.2 tight, 0.25 free, 0.3 free, 0.35 free, 0.4 loose, 0.45 loose';

describe('advice from a log', () => {
  it.each([
    ['no trial', []],
    ['one', trialsOf('0.25 free')],
    ['two', trialsOf('0.2 tight, 0.3 free')],
    ['three fused ones', trialsOf('0.1 fused, 0.2 fused, 0.3 fused')],
    ['three loose ones', trialsOf('0.1 loose, 0.2 loose, 0.3 loose')],
    ['five that contradict', trialsOf('0.1 loose, 0.2 free, 0.25 free, 0.3 fused, 0.4 tight')],
  ])('knows too little from %s, and advises no profile', (_, trials) => {
    const { knows, lacks, profile, next, fit } = sole(trials);
    expect(knows).toBe('too little');
    expect(lacks).toMatch(trials.length < 3 ? /of at least 3 trials/ : /only \d+ in 100/);
    expect(profile).toEqual({});
    expect(next.length).toBeGreaterThan(0);
    for (const { gap } of next) expect(gap).toBeGreaterThanOrEqual(0.02);
    expect(Object.values(fit.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 9);
  });

  it('knows enough from three that agree, and more from eight', () => {
    const three = sole(trialsOf('0.2 tight, 0.3 free, 0.4 loose'));
    expect(three.knows).toBe('enough');
    expect(three.fit.gap).toBeGreaterThan(0.25);
    expect(three.fit.gap).toBeLessThan(0.35);
    const all = sole(trialsOf(eight));
    expect(all.fit.chances.free).toBeGreaterThan(0.85);
    expect(all.fit.middle.sd).toBeLessThan(three.fit.middle.sd);
    expect(all.fit.range!.least).toBeGreaterThan(0.2);
    expect(all.fit.range!.most).toBeLessThan(0.4);
    expect(all.profile).toEqual({ fit: { gap: all.fit.gap } });
  });

  it('goes up after fused prints and down after loose ones', () => {
    expect(sole(trialsOf('0.1 fused, 0.2 fused, 0.3 fused')).fit.gap).toBeGreaterThan(0.4);
    expect(sole(trialsOf('0.1 loose, 0.2 loose, 0.3 loose')).fit.gap).toBeLessThan(0.1);
  });

  it('names the trials that disagree', () => {
    const { disagreements } = sole(trialsOf('0.2 free, 0.3 fused, 0.25 tight'));
    expect(disagreements).toEqual([
      { wider: { gap: 0.3, outcome: 'fused' }, narrower: { gap: 0.2, outcome: 'free' } },
      { wider: { gap: 0.3, outcome: 'fused' }, narrower: { gap: 0.25, outcome: 'tight' } },
      { wider: { gap: 0.25, outcome: 'tight' }, narrower: { gap: 0.2, outcome: 'free' } },
    ]);
    expect(sole(trialsOf(eight)).disagreements).toEqual([]);
  });

  it('keeps printers, filaments and dryness apart, but learns from each other', () => {
    const at = (printer: string, filament: string, dryness: Trial['dryness']) => ({
      printer,
      filament,
      dryness,
    });
    const log = [
      ...trialsOf(eight, at('workshop', 'PLA', 6)),
      ...trialsOf('0.35 tight, 0.45 free', at('workshop', 'PETG', 'damp')),
    ];
    const [petg, pla] = advise(log);
    expect(petg.conditions).toEqual(at('workshop', 'PETG', 'damp'));
    expect(pla.conditions).toEqual(at('workshop', 'PLA', 'dry'));
    expect([petg.trials.own, petg.trials.others, pla.trials.own, pla.trials.others]).toEqual([2, 8, 8, 2]);
    expect(petg.fit.gap).toBeGreaterThan(pla.fit.gap + 0.05);
    const alone = sole(log.slice(8));
    expect(petg.fit.middle.sd).toBeLessThan(alone.fit.middle.sd);
    expect(petg.troubles).toContain('strings');
    expect(sole(log, { filament: 'petg ' }).conditions.filament).toBe('PETG');
    const elsewhere = sole(log, { printer: 'library' });
    expect(elsewhere.trials).toEqual({ own: 0, others: 10, leftOut: 0 });
    expect(elsewhere.fit.middle.sd).toBeGreaterThan(pla.fit.middle.sd);
  });

  it('counts readings for their printer and filament, whatever the dryness', () => {
    const reading = { feature: 'bar', drawn: 20, read: 20.1 } as const;
    const log: Trial[] = [
      ...trialsOf('0.3 free', { filament: 'PLA', dryness: 'dry' }),
      { filament: 'pla', readings: [reading] },
      { filament: 'ABS', readings: [reading, reading] },
    ];
    const found = advise(log).map(({ conditions, readings }) => [conditions.filament, readings]);
    expect(found).toEqual([
      ['PLA', 1],
      ['ABS', 2],
    ]);
  });

  it('leaves out the rarest of many other conditions, and says so', () => {
    const others = Array.from({ length: 9 }, (_, i) =>
      trialsOf(i < 6 ? '0.2 tight, 0.3 free' : '0.3 free', { printer: `p${i}` }),
    ).flat();
    const { trials } = sole([...trialsOf(eight), ...others], { printer: 'mine' });
    expect(trials.own + trials.others + trials.leftOut).toBe(23);
    expect(trials.leftOut).toBeGreaterThan(0);
  });

  it('is about the drawn gap: growth that a print compensated counts twice', () => {
    const plain = sole(trialsOf(eight));
    const compensated = trialsOf(eight).map((trial) => ({
      ...trial,
      gap: Number((trial.gap! - 0.08).toFixed(2)),
      growth: 0.04,
    }));
    const advice = sole(compensated);
    expect(advice.compensated).toBe(0.04);
    expect(advice.fit.gap).toBeCloseTo(plain.fit.gap - 0.08, 9);
    expect(advice.profile).toEqual({ printer: { growth: 0.04 }, fit: { gap: advice.fit.gap } });
  });

  it('gives growth from readings to the profile, and takes it from the gap', () => {
    const readings = [
      { feature: 'bar', drawn: 20, read: 20.01 },
      { feature: 'hole', drawn: 20, read: 19.85 },
      { feature: 'bar', drawn: 100, read: 99.77 },
      { feature: 'hole', drawn: 100, read: 99.61 },
    ] as const;
    const log = [...trialsOf(eight, { filament: 'petg' }), { filament: 'PETG', readings: [...readings] }];
    const { profile, fit, growth } = sole(log);
    // Half of what bars read more than holes, and what both read too little.
    expect(growth.growth.mean).toBeCloseTo(0.04, 2);
    expect(growth.shrinkage.mean).toBeCloseTo(0.31, 1);
    expect(growth.firstLayerGrowth.known).toBe(false);
    expect(profile.filament).toEqual({
      material: 'PETG',
      shrinkage: expect.closeTo(growth.shrinkage.mean, 3),
    });
    expect(profile.printer).toEqual({ growth: expect.closeTo(growth.growth.mean, 3) });
    expect(profile.fit!.gap).toBeCloseTo(fit.gap - 2 * growth.growth.mean, 2);
    expect(readProfile(JSON.stringify(profile))).toEqual(profile);
  });

  it('sees the reading that does not fit, and then knows nothing for certain', () => {
    const readings = [
      { feature: 'bar', drawn: 20, read: 20.01 },
      { feature: 'hole', drawn: 20, read: 19.85 },
      { feature: 'bar', drawn: 20, read: 21.5 },
      { feature: 'bar', drawn: 100, read: 99.77 },
    ] as const;
    const { growth } = sole([{ readings: [...readings] }]);
    expect(growth.misfits).toEqual([{ reading: readings[2], expected: expect.closeTo(20.01, 1) }]);
    expect(growth.growth.known).toBe(false);
  });

  it('points to troubles that are listed', () => {
    const ids = new Set(troubles.map(({ id }) => id));
    for (const outcome of ['fused', 'tight', 'loose'] as const) {
      const suggested = sole(trialsOf(`0.3 ${outcome}`, { dryness: 'damp' })).troubles;
      expect(suggested.length).toBeGreaterThan(1);
      for (const id of suggested) expect(ids).toContain(id);
    }
  });
});

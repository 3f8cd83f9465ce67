import { describe, expect, it } from 'vitest';
import { advise } from '../../../lib/fit/trials/advise.js';
import { entryProblems } from '../../../lib/fit/trials/entryProblems.js';
import { readPhrase } from '../../../lib/fit/trials/readingPhrase.js';
import {
  features,
  logSchema,
  most,
  outcomes,
  perWallOf,
  trialRanges,
} from '../../../lib/fit/trials/trialSchema.js';
import type { File } from '../../spec/table.js';

const bar = { feature: 'bar', drawn: 20, read: 20.1 };
const problemsOf = (trials: unknown) => {
  const data = { trials };
  return entryProblems(logSchema.safeParse(data).error?.issues ?? [], data);
};
const one = (trial: File) => problemsOf([{ gap: 0.2, outcome: 'free' }, trial]);
const reading = (more: File) => one({ readings: [bar, { ...bar, ...more }] });
const long = (letters: number) => 'x'.repeat(letters);

describe('an entry of a log', () => {
  it.each<[string, unknown, RegExp, unknown[]]>([
    ['gap', 5, /^must be a number from 0.02 to 2 mm$/, [2]],
    ['gap', '0,3 mm', /^must be a number from 0.02 to 2 mm$/, [0.3]],
    ['outcome', 'fre', /^must be one of fused, tight, free, loose$/, ['free']],
    ['outcome', 7, /^must be one of fused/, [...outcomes]],
    ['printer', '', /^must be a name of at most 100 letters on one line$/, []],
    ['printer', '   ', /^must be a name of at most 100 letters on one line$/, []],
    ['printer', long(101), /^must be a name of at most 100 letters/, []],
    ['filament', 'two\nlines', /on one line$/, []],
    ['filament', 'turned \u202e round', /on one line$/, []],
    ['dryness', 'dri', /^must be dry, damp, unknown or the hours it was dried, 0 to 1000$/, ['dry']],
    ['dryness', 5000, /the hours it was dried/, [1000]],
    ['temperature', 20, /^must be a number from 100 to 500 °C$/, [100]],
    ['layer', 99, /^must be a number from .* mm$/, [trialRanges.layer[1]]],
    ['growth', -99, /^must be a number from .* mm$/, [trialRanges.growth[0]]],
    ['date', '2026-02-30', /^must be a day, as 2026-05-30$/, []],
    ['date', '30.5.2026', /^must be a day/, []],
    ['notes', long(2001), /^must be text of at most 2000 letters$/, []],
    ['readings', Array(101).fill(bar), /^must be a list of at most 100 readings$/, []],
  ])('%s %j is refused with what it must be', (key, value, rule, nearest) => {
    const [problem, ...more] = one({ gap: 0.2, outcome: 'free', [key]: value });
    expect(more).toEqual([]);
    expect(problem).toMatchObject({
      parameter: `trials[2].${key}`,
      path: ['trials', 1, key],
      value,
      nearest,
    });
    expect(problem.rule).toMatch(rule);
  });

  it.each<[string, unknown]>([
    ['printer', 'x'],
    ['printer', long(most.label)],
    ['printer', 3],
    ['notes', long(most.notes)],
    ['date', '2024-02-29'],
    ['dryness', 'damp'],
    ['dryness', 8],
    ['readings', Array(most.readings).fill(bar)],
  ])('%s is taken up to its limit', (key, value) => {
    expect(one({ gap: 0.2, outcome: 'free', [key]: value })).toEqual([]);
  });

  it('of a name is kept without the spaces around it', () => {
    const trials = [{ gap: 0.2, outcome: 'free', printer: ' the workshop\t', filament: 7 }];
    expect(logSchema.parse({ trials }).trials![0]).toMatchObject({ printer: 'the workshop', filament: '7' });
  });

  it.each<[string, unknown, RegExp, unknown[]]>([
    ['feature', 'hol', /^must be one of base tangent length, over pins, bar, hole, /, ['hole']],
    ['part', '', /^must be a name of at most 100 letters/, []],
    ['teeth', 2.4, /^must be a whole number from 1 to /, [2]],
    ['teeth', 0, /^must be a whole number from 1 to /, [1]],
    ['drawn', 0, /^must be a number from 0.1 to 3000 mm$/, [0.1]],
    ['read', 9999, /^must be a number from 0.1 to 3000 mm$/, [3000]],
    ['perWall', 200, /^must be a number from -100 to 100$/, [100]],
    ['firstLayer', 'tru', /^must be true or false$/, ['true']],
  ])('%s %j of a reading is refused with what it must be', (key, value, rule, nearest) => {
    const [problem] = reading({ [key]: value });
    expect(problem).toMatchObject({
      parameter: `trials[2].readings[2].${key}`,
      path: ['trials', 1, 'readings', 1, key],
      value,
      nearest,
    });
    expect(problem.rule).toMatch(rule);
  });

  it('that is missing is asked for, once and not where it stands misspelt', () => {
    const missing = one({ readings: [{ feature: 'bar', drawn: 20 }] });
    expect(missing).toHaveLength(1);
    expect(missing[0]).toMatchObject({ parameter: 'trials[2].readings[1].read', value: undefined });
    expect(missing[0].rule).toMatch(/^is required: a number from 0.1/);
    expect(one({ readings: [{ feature: 'bar', drawn: 20, red: 20.1 }] })).toMatchObject([
      { parameter: 'trials[2].readings[1].red', rule: 'unknown key', nearest: ['read'], value: 20.1 },
    ]);
    // Misspelt in another reading, it is missing in this one.
    const both = one({
      readings: [
        { feature: 'bar', drawn: 20 },
        { feature: 'bar', drawn: 20, red: 20.1 },
      ],
    });
    expect(both.map(({ parameter }) => parameter)).toEqual([
      'trials[2].readings[1].read',
      'trials[2].readings[2].red',
    ]);
    // A key of another name does not stand for it.
    const other = one({ readings: [{ feature: 'bar', drawn: 20, prt: 'sun' }] });
    expect(other.map(({ parameter, nearest }) => [parameter.split('.').at(-1), nearest])).toEqual([
      ['read', []],
      ['prt', ['part']],
    ]);
  });

  it('of no known name is answered with the nearest there', () => {
    expect(one({ gap: 0.2, outcome: 'free', tempreture: 200 })).toMatchObject([
      { parameter: 'trials[2].tempreture', rule: 'unknown key', nearest: ['temperature'], value: 200 },
    ]);
    const data = { trails: [] };
    expect(entryProblems(logSchema.safeParse(data).error!.issues, data)).toMatchObject([
      { parameter: 'trails', rule: 'unknown key', nearest: ['trials'] },
    ]);
    expect(entryProblems(logSchema.safeParse([]).error!.issues, [])[0]).toMatchObject({
      parameter: 'trial',
      rule: expect.stringMatching(/^must be a mapping/),
    });
  });

  it('goes with others: gap and outcome, a slope where the feature says none, a size that is no slip', () => {
    expect(one({ gap: 0.2 })).toMatchObject([
      {
        parameter: 'trials[2].outcome',
        rule: expect.stringMatching(/^is required with a gap: fused, tight/),
      },
    ]);
    expect(one({ outcome: 'free' })).toMatchObject([
      { parameter: 'trials[2].gap', rule: 'is required with an outcome: mm' },
    ]);
    for (const empty of [{}, { readings: [] }])
      expect(one(empty)).toMatchObject([
        { parameter: 'trials[2]', rule: 'needs gap and outcome, or readings', nearest: [] },
      ]);
    for (const feature of features) {
      const needs = perWallOf(feature) === undefined;
      const found = one({ readings: [{ feature, drawn: 20, read: 20.1 }] });
      expect(found.length, feature).toBe(needs ? 1 : 0);
      if (!needs) continue;
      expect(found[0].parameter).toBe('trials[2].readings[1].perWall');
      expect(found[0].rule).toContain(`is required for ${feature}`);
      expect(reading({ feature, perWall: 2 })).toEqual([]);
    }
    // Off by 0.8 mm of growth on two walls and 3 % of the size, and no farther.
    for (const [read, count] of [
      [20 + 1.6 + 0.6 - 0.01, 0],
      [20 + 1.6 + 0.6 + 0.01, 1],
      [20 - 1.6 - 0.6 + 0.01, 0],
      [20 - 1.6 - 0.6 - 0.01, 1],
    ])
      expect(reading({ read }).map(({ parameter }) => parameter)).toEqual(
        Array(count).fill('trials[2].readings[2].read'),
      );
    expect(reading({ feature: 'over pins', perWall: 5, read: 24.5 })).toEqual([]);
    expect(reading({ feature: 'over pins', perWall: 5, read: 24.7 })[0].rule).toMatch(
      /too far from the drawn 20 mm .*read it again/,
    );
  });
});

describe('a reading in words', () => {
  it.each<[string, object]>([
    ['planet bore 8 = 7.8', { feature: 'bore', part: 'planet', drawn: 8, read: 7.8 }],
    ['HOLE = .5mm', { feature: 'hole', read: 0.5 }],
    [
      'between pins 30 mm=30.25 mm per wall -5.5',
      { feature: 'over pins', drawn: 30, read: 30.25, perWall: -5.5 },
    ],
    ['base tangent over 4 teeth = 16', { feature: 'base tangent length', teeth: 4, read: 16 }],
    [
      '  Ring   outer diameter 90 = 90.2 on the first layer ',
      {
        feature: 'outer diameter',
        part: 'ring',
        drawn: 90,
        read: 90.2,
        firstLayer: true,
      },
    ],
    [
      'root diameter 5 = 5.1 at first layer',
      { feature: 'root diameter', drawn: 5, read: 5.1, firstLayer: true },
    ],
  ])('%s', (text, expected) => {
    expect(readPhrase(text)).toEqual(expected);
  });
});

describe('advice in words', () => {
  const contradicting = [
    ['0.1', 'loose'],
    ['0.2', 'free'],
    ['0.25', 'free'],
    ['0.3', 'fused'],
    ['0.4', 'tight'],
  ].map(([gap, outcome]) => ({ gap: Number(gap), outcome: outcome as (typeof outcomes)[number] }));

  it('says how likely a free print is and what is asked, in hundredths', () => {
    const [{ lacks, fit }] = advise(contradicting);
    expect(lacks).toBe(
      `even at the likeliest gap, ${fit.gap} mm, only ${Math.round(100 * fit.chances.free)} in 100 prints would be free; 70 are asked for`,
    );
    expect(fit.chances.free).toBeGreaterThan(0.1);
    expect(fit.chances.free).toBeLessThan(0.7);
  });

  it('counts readings of another printer for that one', () => {
    const reading = { feature: 'bar', drawn: 20, read: 20.1 } as const;
    const log = [
      { gap: 0.3, outcome: 'free', printer: 'workshop' } as const,
      { printer: 'workshop', readings: [reading] },
      { printer: 'library', readings: [reading, reading] },
    ];
    expect(advise(log).map(({ conditions, readings }) => [conditions.printer, readings])).toEqual([
      ['workshop', 1],
      ['library', 2],
    ]);
  });

  it('expects of a reading that does not fit what the others say, on its own size', () => {
    const at = (drawn: number, off: number) => ({ feature: 'bar', drawn, read: drawn + off }) as const;
    const [{ growth }] = advise([{ readings: [at(60, 0.05), at(40, 0.05), at(30, 0.05), at(50, 1.4)] }]);
    expect(growth.misfits).toHaveLength(1);
    expect(growth.misfits[0].expected).toBeGreaterThan(50);
    expect(growth.misfits[0].expected).toBeLessThan(50.2);
  });

  it('names the profile of a printer that is shipped, and the material, where something is known of it', () => {
    const known = [0.2, 0.25, 0.3, 0.35, 0.4].map((gap, i) => ({
      gap,
      outcome: (['tight', 'free', 'free', 'free', 'loose'] as const)[i],
      printer: 'Fine',
      filament: 'pla ',
    }));
    const [{ profile, fit }] = advise(known);
    expect(profile).toEqual({
      printer: { profile: 'fine' },
      filament: { material: 'PLA' },
      fit: { gap: fit.gap },
    });
    const [{ profile: unknown }] = advise(known.slice(0, 1));
    expect(unknown).toEqual({});
  });

  it('asks next for gaps that are not all but certain', () => {
    const sure = Array.from({ length: 30 }, (_, i) => ({
      gap: 0.1 + 0.02 * i,
      outcome: outcomes[i < 5 ? 0 : i < 8 ? 1 : i < 18 ? 2 : 3],
    }));
    for (const { next } of [advise(contradicting)[0], advise(sure)[0]])
      for (const { chances } of next)
        for (const chance of Object.values(chances)) expect(chance).toBeLessThanOrEqual(0.9);
  });
});

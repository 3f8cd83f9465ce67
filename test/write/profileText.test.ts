import { describe, expect, it } from 'vitest';
import { type Advice, advise } from '../../lib/fit/trials/advise.js';
import type { Trial } from '../../lib/fit/trials/trialSchema.js';
import { readProfile } from '../../lib/spec/readSpec.js';
import { profileText } from '../../lib/write/trials/profileText.js';
import { problemsOf } from '../spec/table.js';

const [advice] = advise(
  (['tight', 'free', 'free', 'loose'] as const).map(
    (outcome, i): Trial => ({
      gap: 0.2 + 0.07 * i,
      outcome,
      filament: 'petg',
      printer: 'the\tlibrary',
      growth: 0.02,
    }),
  ),
);
const gap = advice.profile.fit!.gap;
const texts = (before: string | undefined, json = false) => profileText(advice, before, json);

describe('a profile with what is advised', () => {
  it('says what it is about, where it is new', () => {
    const text = texts(undefined);
    expect(text).toMatch(/^# Profile for the library, petg, dryness unknown: /);
    expect(text.split('\n').filter((line) => line.startsWith('#')).length).toBe(3);
    expect(readProfile(text)).toEqual({
      printer: { growth: 0.02 },
      filament: { material: 'PETG' },
      fit: { gap },
    });
    expect(JSON.parse(texts(undefined, true))).toEqual(advice.profile);
  });

  it('keeps everything else of one that is there', () => {
    const before =
      '# mine\nprinter: large # big\nfilament: { modulus: 1900 }\nfit: { gapShare: 1, gap: 0.5 } # old\n';
    const text = texts(before);
    expect(text).toContain('# mine');
    expect(text).toContain('# old');
    expect(readProfile(text)).toMatchObject({
      printer: { profile: 'large', nozzle: 0.6, growth: 0.02 },
      filament: { modulus: 1900, material: 'PETG' },
      fit: { gapShare: 1, gap },
    });
    const json = texts('{"printer":"fine","filament":"PETG"}');
    expect(JSON.parse(json)).toEqual({
      printer: { profile: 'fine', growth: 0.02 },
      filament: { material: 'PETG' },
      fit: { gap },
    });
  });

  it.each([
    ['of another material', 'filament: PLA\n', 'profile.filament.material'],
    ['of another material, in JSON', '{"filament":{"material":"PLA"}}', 'profile.filament.material'],
    ['that is a parameter file', 'kind: planetary\n', 'profile.kind'],
    ['that is broken', 'printer: {', 'profile'],
  ])('is refused over one %s', (_, before, parameter) => {
    expect(problemsOf(before, texts)[0].parameter).toBe(parameter);
  });

  it('says so where the gap is not known', () => {
    const without: Advice = { ...advice, profile: { printer: { growth: 0.02 } } };
    expect(profileText(without, undefined, false)).toContain('Too little is known of the gap');
  });
});

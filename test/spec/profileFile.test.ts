import { describe, expect, it } from 'vitest';
import { readProfile, readSpec } from '../../lib/spec/readSpec.js';
import { problemsOf } from './table.js';

const set =
  'kind: planetary\nmodule: 1.5\nfaceWidth: 20\nsun: { teeth: 15 }\nplanets: { teeth: 15, count: 5 }\n';
const withProfile = (file: string, profile: string) => readSpec(set + file, 'set', readProfile(profile));
const refused = (profile: string) =>
  problemsOf(profile, readProfile).map(({ parameter, nearest }) => [parameter, nearest[0]]);

describe('a profile file', () => {
  it('fills what the parameter file leaves out, and nothing that it gives', () => {
    const profile = 'printer: { profile: large, growth: 0.04 }\nfilament: { material: PETG, shrinkage: 0.3 }';
    const alone = withProfile('', profile);
    expect(alone.printer).toMatchObject({ nozzle: 0.6, layer: 0.3, growth: 0.04 });
    expect(alone.filament).toMatchObject({ material: 'PETG', shrinkage: 0.3, glassTransition: 75 });
    const own = withProfile(
      'printer: { growth: 0.01, bed: { width: 100 } }\nfilament: { shrinkage: 0 }\n',
      profile,
    );
    expect(own.printer).toMatchObject({ nozzle: 0.6, growth: 0.01, bed: { width: 100, depth: 300 } });
    expect(own.filament).toMatchObject({ material: 'PETG', shrinkage: 0 });
  });

  it('is the same as its values written into the parameter file', () => {
    const profile = 'printer: fine\nfilament: ABS\n';
    expect(withProfile('', profile)).toEqual(readSpec(set + profile, 'set'));
    expect(withProfile(profile, '{}')).toEqual(readSpec(set + profile, 'set'));
  });

  it('leaves out a group where the file names another printer or material: its figures are of something else', () => {
    const profile = 'printer: { profile: large, growth: 0.04 }\nfilament: { material: PETG, shrinkage: 0.3 }';
    const { printer, filament } = withProfile('printer: small\nfilament: ABS\n', profile);
    expect(printer).toMatchObject({ profile: 'small', nozzle: 0.4, growth: 0 });
    expect(filament).toMatchObject({ material: 'ABS', modulus: 2100, shrinkage: 0 });
  });

  it('brings its gap along, unless the file gives one or names what the gap was not found with', () => {
    const profile = 'filament: { material: PETG }\nfit: { gap: 0.31 }';
    expect(withProfile('', profile).fit).toEqual({ gap: 0.31, gapShare: 0.5 });
    expect(withProfile('fit: { gapShare: 1 }\n', profile).fit).toEqual({ gap: 0.31, gapShare: 1 });
    expect(withProfile('fit: { gap: 0.2 }\n', profile).fit.gap).toBe(0.2);
    expect(withProfile('filament: PETG\n', profile).fit.gap).toBe(0.31);
    expect(withProfile('filament: ABS\n', profile).fit.gap).toBe(0.25);
    expect(refused('fit: { gap: 5 }')).toEqual([['profile.fit.gap', 2]]);
  });

  it.each<[string, string, [string, unknown][]]>([
    ['a value out of range', 'printer: { nozzle: 5 }', [['profile.printer.nozzle', 2]]],
    ['an unknown name', 'filament: petg', [['profile.filament', 'PETG']]],
    ['a misspelt key', 'printer: { groth: 0.1 }', [['profile.printer.groth', 'printer.growth']]],
    [
      'keys of a parameter file',
      'module: 2\nfilamnt: PLA',
      [
        ['profile.module', 'printer'],
        ['profile.filamnt', 'filament'],
      ],
    ],
    ['a list', '[1]', [['profile', { printer: 'usual' }]]],
    ['a broken file', 'printer: {', [['profile', undefined]]],
    ['nothing', ' \n', [['profile', undefined]]],
    ['prototype keys', 'printer: { __proto__: { growth: 1 } }', [['profile.printer.__proto__', undefined]]],
  ])('%s is refused, and said to be in the profile', (_, profile, expected) => {
    const found = refused(profile);
    expect(found.map(([parameter]) => parameter)).toEqual(expected.map(([parameter]) => parameter));
    for (const [i, [, nearest]] of expected.entries())
      if (nearest !== undefined && nearest !== 'printer') expect(found[i][1]).toEqual(nearest);
  });

  it('and a file that is none are refused together by the rules between them', () => {
    expect(
      problemsOf('printer: { nozzle: 0.2 }\n', (own: string) =>
        readSpec(set + own, 'set', readProfile('printer: { layer: 0.3 }')),
      )[0],
    ).toMatchObject({ parameter: 'printer.layer', value: 0.3, nearest: [0.2] });
  });
});

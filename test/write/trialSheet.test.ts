import { describe, expect, it } from 'vitest';
import { perWallOverPins } from '../../lib/fit/trials/perWallOverPins.js';
import { readPhrase } from '../../lib/fit/trials/readingPhrase.js';
import { inspectSet } from '../../lib/proof/proveSet.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { baseTangentLength, teethSpanned } from '../../lib/tooth/baseTangent.js';
import { type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { overPins, practicalPin } from '../../lib/tooth/overPins.js';
import { readingOf, readTrialSheet, sheetDefaults } from '../../lib/write/trials/sheetTrial.js';
import { problemsOf, soleProblem } from '../spec/table.js';

describe('a reading as it is typed', () => {
  it.each([
    ['bar 20 = 20.11', { feature: 'bar', drawn: 20, read: 20.11 }],
    ['Hole 5mm=4.83 mm on the first layer', { feature: 'hole', drawn: 5, read: 4.83, firstLayer: true }],
    [
      'base-tangent over 3 teeth 11.52 = 11.6',
      { feature: 'base tangent length', teeth: 3, drawn: 11.52, read: 11.6 },
    ],
    ['sun base tangent length = 11.60', { feature: 'base tangent length', part: 'sun', read: 11.6 }],
    ['over pins 29 = 29.3 per wall 5.4', { feature: 'over pins', drawn: 29, read: 29.3, perWall: 5.4 }],
    [
      'ring tip diameter = 75.2 first layer',
      { feature: 'tip diameter', part: 'ring', read: 75.2, firstLayer: true },
    ],
  ])('%s', (text, expected) => {
    expect(readPhrase(text)).toEqual(expected);
  });

  it.each(['bar', 'bar 20', 'bar 20 20.1', 'bar 20 = x', 'bar 20 = 20,1', 'width 20 = 20.1', '= 3', ''])(
    '%j is refused with examples',
    (text) => {
      const { parameter, nearest } = soleProblem(text, readPhrase);
      expect(parameter).toBe('reading');
      for (const example of nearest) expect(readPhrase(String(example)).read).toBeGreaterThan(0);
    },
  );
});

describe('sizes and walls', () => {
  const gears: [string, Gear][] = [
    ['even', { teeth: 20 }],
    ['odd, helical, shifted', { teeth: 15, helixAngle: 30, profileShift: 0.3 }],
    ['ring', { teeth: 45, internal: true }],
    ['even ring', { teeth: 48, internal: true, profileShift: 0.2 }],
  ].map(([name, own]) => [
    name as string,
    {
      module: 1.5,
      pressureAngle: 20,
      rack: { addendum: 1, dedendum: 1.25, fillet: 0.3 },
      helixAngle: 0,
      profileShift: 0,
      internal: false,
      ...(own as object),
    } as Gear,
  ]);

  it.each(gears)('over pins follows them as the formula for the size itself does: %s', (_, gear) => {
    const pin = practicalPin(gear);
    const step = 1e-5;
    const perWall = (overPins(gear, pin, -step) - overPins(gear, pin, step)) / (2 * step);
    const found = perWallOverPins({
      teeth: gear.teeth,
      internal: gear.internal,
      baseDiameter: 2 * gearSizes(gear).baseRadius,
      pressureAngle: gear.pressureAngle,
      helixAngle: gear.helixAngle,
      pin,
      size: overPins(gear, pin),
    });
    expect(found).toBeCloseTo(perWall, 4);
  });

  it('base tangent length follows them twice, inside out for a ring', () => {
    for (const [, gear] of gears.filter(([, { internal, helixAngle }]) => !internal || helixAngle === 0)) {
      const span = teethSpanned(gear);
      const perWall = (baseTangentLength(gear, span, 0) - baseTangentLength(gear, span, 0.01)) / 0.01;
      expect(perWall).toBeCloseTo(gear.internal ? -2 : 2, 9);
    }
  });
});

describe('a trial from a sheet', () => {
  const spec = resolveSpec({
    kind: 'planetary',
    module: 1.5,
    faceWidth: 6,
    helix: { form: 'spur' },
    sun: { teeth: 16, bore: { shape: 'round', diameter: 8 } },
    planets: { teeth: 16, count: 4 },
    fit: { gap: 0.2 },
    printer: { layer: 0.15, growth: 0.03 },
    filament: { material: 'PETG', shrinkage: 0.3 },
    tolerance: 0.05,
  });
  const { sizes } = inspectSet(spec).printing;
  const sheet = readTrialSheet(JSON.stringify(inspectSet(spec)), 's.sheet.json');
  const drawnOf = (part: string, feature: string) =>
    sizes.find((size) => size.part === part && size.feature === feature)!.drawn;

  it('takes gap, growth, layer and material from it', () => {
    expect(sheetDefaults(sheet)).toEqual({ gap: 0.2, growth: 0.03, layer: 0.15, filament: 'PETG' });
  });

  it.each<[string, string, string, object]>([
    ['sun base tangent = 11.6', 'sun', 'base tangent length', { teeth: 2 }],
    ['planets base tangent = 11.6', 'planet', 'base tangent length', { teeth: 2 }],
    ['ring base tangent = 40', 'ring', 'base tangent length', { perWall: -2 }],
    ['sun over pins = 28', 'sun', 'over pins', { perWall: expect.any(Number) }],
    ['ring root diameter = 76', 'ring', 'root diameter', { perWall: -2 }],
    ['sun tip diameter = 27', 'sun', 'tip diameter', { perWall: 2 }],
    ['bore = 7.8', 'sun', 'bore', {}],
    ['outer diameter = 90', 'ring', 'outer diameter', {}],
  ])('takes the drawn size from it: %s', (text, part, feature, more) => {
    const reading = readingOf(readPhrase(text), sheet);
    expect(reading).toMatchObject({ part, feature, ...more });
    expect(reading.drawn).toBeCloseTo(drawnOf(part, feature), 3);
  });

  it('a reading needs a part that is clear, a size that is known, and how it follows the walls', () => {
    const problemOf = (text: string, from: typeof sheet | undefined) =>
      soleProblem(text, (t: string) => readingOf(readPhrase(t), from));
    expect(problemOf('base tangent = 11', sheet).nearest).toContain('planet base tangent length');
    expect(problemOf('bar = 11', sheet).rule).toContain('no size of the sheet');
    expect(problemOf('ring bore = 11', sheet).nearest).toContain('sun bore');
    expect(problemOf('bar = 11', undefined).rule).toContain('--sheet');
    expect(problemOf('over pins 29 = 29.1', undefined).nearest).toEqual(['per wall 5.8']);
    expect(readingOf(readPhrase('bar 20 = 20.1'), sheet)).toEqual({ feature: 'bar', drawn: 20, read: 20.1 });
  });

  it.each(['', 'x', '[]', '{}', '{"resolved":{}}', 'null'])('%j is refused as a sheet', (text) => {
    const problems = problemsOf(text, (t: string) => readTrialSheet(t, 's.json'));
    expect(problems).toMatchObject([{ parameter: 'sheet', value: 's.json' }]);
  });
});

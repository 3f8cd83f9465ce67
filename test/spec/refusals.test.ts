import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { gearSizes } from '../../lib/tooth/gear.js';
import { planetary } from '../sets.js';
import { problemsOf, soleProblem, spinner, withValue } from './table.js';

describe('refusals', () => {
  it.each<[string, unknown, string]>([
    ['module', undefined, 'missing'],
    ['module', -1, 'out-of-range'],
    ['module', '1.5', 'not-a-number'],
    ['sun.teeth', 15.5, 'not-whole'],
    ['sun.tooth', 15, 'unknown-key'],
    ['rack', 'E', 'not-one-of'],
    ['sun.bore', 8, 'wrong-type'],
    ['name', 'a/b', 'bad-name'],
    ['fit.gap', 1.2, 'beyond-limit'],
    ['rack', { addendum: 1, dedendum: 1.25, fillet: 0.6 }, 'no-fillet-room'],
    ['transverseModule', 1.5, 'excluded'],
  ])('%s %s is %s', (path, value, code) => {
    expect(soleProblem(withValue(path, value)).code).toBe(code);
  });

  it.each<[string, unknown, unknown[]]>([
    ['module', -1, [0.2]],
    ['module', 0, [0.2]],
    ['module', 1e300, [20]],
    ['module', Number.NaN, [1.5]],
    ['module', Number.POSITIVE_INFINITY, [20]],
    ['module', Number.NEGATIVE_INFINITY, [0.2]],
    ['module', '1.5', [1.5]],
    ['module', '1,5 mm', [1.5]],
    ['module', null, [1.5]],
    ['module', true, [1.5]],
    ['module', [1.5], [1.5]],
    ['pressureAngle', 45, [30]],
    ['pressureAngle', 5, [14]],
    ['rack', 'E', ['A']],
    ['rack', 7, ['B']],
    ['helix.form', 'herringbne', ['herringbone']],
    ['helix.form', 'Spur', ['spur']],
    ['helix.angle', 60, [45]],
    ['helix.angle', 0.5, [1]],
    ['helix.hand', 'rigth', ['right']],
    ['faceWidth', 0, [1]],
    ['faceWidth', 4000, [300]],
    ['bevel.angle', 80, [60]],
    ['bevel.size', 9, [1.75]],
    ['bevel.size', 2.4e-61, [0, 0.001]],
    ['profileShift', 'solv', ['solve']],
    ['sun.teeth', 10_000, [400]],
    ['sun.teeth', 15.5, [16]],
    ['sun.teeth', 4, [5]],
    ['sun.teeth', -15, [5]],
    ['sun.profileShift', 3, [1.5]],
    ['sun.bore', 'round', [{ shape: 'round', diameter: 6.6 }]],
    ['sun.bore', 8, [{ shape: 'round', diameter: 8 }]],
    ['printer.bed', 300, [{ width: 300, depth: 300, height: 300 }]],
    ['planets.count', 1, [2]],
    ['planets.count', 99, [12]],
    ['planets.count', undefined, [3]],
    ['planets.spacing', 'near', ['nearest']],
    ['ring.teeth', 15, [45]],
    ['ring.rim', 0.1, [0.4]],
    ['fit.gap', 0, [0.02]],
    ['fit.gap', 1.2, [1.125]],
    ['fit.gap', 50, [1.125]],
    ['fit.gapShare', 2, [1]],
    ['printer.nozzle', 5, [2]],
    ['printer.layer', 0.5, [0.4]],
    ['carrier', 'pins', [{ form: 'pins' }]],
    ['helix', 'spur', [{ form: 'spur' }]],
    ['fit', 0.3, [{ gap: 0.3 }]],
    ['carrier.plates', 'under', ['above']],
    ['retention', 'lip', ['lips']],
    ['tolerance', 0, [0.0005]],
    ['tolerance', 1, [0.1]], // two fifths of the usual gap
    ['limits.contactRatio', 0, [1]],
    ['name', '../escape', ['escape']],
    ['name', '.hidden', ['hidden']],
    ['name', 'a/b\\c', ['a-b-c']],
    ['name', 'x'.repeat(101), ['x'.repeat(100)]],
    ['name', 'con\u0007trol', ['con-trol']],
    ['name', 7, ['planetary-set']],
    ['fit', 3, [{}]],
    ['sun', null, [{ teeth: 15 }]],
    ['kind', undefined, ['planetary']],
    ['faceWidth', undefined, [20]],
  ])('%s: %o is refused, offering %o', (path, value, nearest) => {
    const problem = soleProblem(withValue(path, value));
    expect(problem.parameter).toBe(path);
    expect(problem.value).toEqual(value);
    expect(problem.nearest).toEqual(nearest);
  });

  it.each(['planetry', 'Planetary', 'gears', 7])(
    'kind %s is refused, offering what the file is of',
    (kind) => {
      expect(soleProblem(withValue('kind', kind))).toMatchObject({
        parameter: 'kind',
        rule: 'must be planetary, pair, rack or gear',
        nearest: ['planetary'],
      });
    },
  );

  it.each([
    ['modul', 'module', { module: undefined, modul: 1.5 }],
    ['facewidth', 'faceWidth', { faceWidth: undefined, facewidth: 20 }],
    ['presure_angle', 'pressureAngle', { presure_angle: 20 }],
    ['gapShare', 'fit.gapShare', { gapShare: 0.2 }],
    ['fit.gapp', 'fit.gap', { fit: { gapp: 0.2 } }],
    ['sun.tooth', 'sun.teeth', { sun: { tooth: 15 } }],
    ['sun.bore.diamter', 'sun.bore.diameter', { sun: { teeth: 15, bore: { shape: 'round', diamter: 5 } } }],
    ['rack.dedundum', 'rack.dedendum', { rack: { addendum: 1, dedundum: 1.25, fillet: 0.3 } }],
  ])('unknown key %s is refused by name, offering %s', (key, nearest, change) => {
    const problems = problemsOf({ ...spinner(), ...change }).filter(({ parameter }) => parameter === key);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ rule: 'unknown key', nearest: [nearest] });
  });

  it('reports a misspelt required key once', () => {
    expect(soleProblem({ ...spinner(), module: undefined, modul: 1.5 }).parameter).toBe('modul');
  });

  it('collects every problem, each with its own parameter', () => {
    const found = problemsOf({
      ...spinner(),
      module: -1,
      faceWidth: 'wide',
      sun: { teeth: 10_000, colour: 'red' },
      planets: { teeth: 15, count: 0 },
      fit: { gap: Number.NaN },
      printer: { layer: 0.5 },
    });
    expect(found.map(({ parameter }) => parameter).sort()).toEqual(
      ['module', 'faceWidth', 'sun.teeth', 'sun.colour', 'planets.count', 'fit.gap', 'printer.layer'].sort(),
    );
  });

  it('lists a hundred of nineteen thousand problems and counts the rest', () => {
    const keys = Array.from({ length: 19_000 }, (_, i) => [`key${i}`, i]);
    const found = problemsOf({ ...spinner(), ...Object.fromEntries(keys) });
    expect(found).toHaveLength(101);
    expect(found[100]).toMatchObject({ parameter: 'file', value: '18900 more' });
  });

  it('wants the module exactly once', () => {
    expect(soleProblem(withValue('module', undefined))).toMatchObject({
      parameter: 'module',
      nearest: [1.5],
    });
    expect(soleProblem(withValue('transverseModule', 2)).parameter).toBe('transverseModule');
    const file = { ...spinner(), module: undefined, transverseModule: 28 };
    expect(soleProblem(file)).toMatchObject({ parameter: 'transverseModule', nearest: [23.094] });
  });

  it('does not blame a value for a rule that another faulty value breaks', () => {
    expect(soleProblem(withValue('module', -1)).parameter).toBe('module');
    expect(soleProblem({ ...spinner(), module: undefined, transverseModule: 0.21 }).parameter).toBe(
      'transverseModule',
    );
  });

  it('refuses helix settings that contradict the form', () => {
    expect(soleProblem(withValue('helix', { form: 'spur', angle: 20 }))).toMatchObject({
      parameter: 'helix.angle',
      nearest: [0],
    });
    expect(soleProblem({ ...spinner(), helix: { form: 'helical' }, retention: 'herringbone' })).toMatchObject(
      {
        parameter: 'retention',
        nearest: ['none', 'lips'],
      },
    );
  });

  it('bounds the set to 2000 mm across and the ring to 1000 teeth', () => {
    const wide = { ...spinner(), module: 20, sun: { teeth: 60 }, planets: { teeth: 60, count: 3 } };
    const problem = soleProblem(wide);
    expect(problem.parameter).toBe('module');
    const { ring, module, helix, rack } = planetary(resolveSpec({ ...wide, module: problem.nearest[0] }));
    const outer =
      2 *
      ((ring.teeth * module) / 2 / Math.cos((helix.angle * Math.PI) / 180) +
        rack.dedendum * module +
        ring.rim);
    expect(outer).toBeLessThanOrEqual(2000);
    expect(outer).toBeGreaterThan(1998);
    const many = soleProblem({
      ...spinner(),
      module: 0.5,
      sun: { teeth: 400 },
      planets: { teeth: 400, count: 3 },
    });
    expect(many).toMatchObject({ parameter: 'planets.teeth', nearest: [300] });
  });

  it('offers a bar that is too long the largest module it fits with, though the lean of its teeth stays', () => {
    const long = { kind: 'rack', module: 1.5, faceWidth: 300, pinion: { teeth: 396 } };
    const { parameter, nearest } = soleProblem(long);
    expect(parameter).toBe('module');
    const module = nearest[0] as number;
    expect(() => resolveSpec({ ...long, module })).not.toThrow();
    expect(() => resolveSpec({ ...long, module: module + 0.001 })).toThrow('2000 mm long');
  });

  it('refuses gears with hardly any body inside their teeth', () => {
    const rack = { addendum: 1, dedendum: 1.9, fillet: 0 };
    const file = { ...spinner(), rack, sun: { teeth: 5, profileShift: -1 }, helix: { form: 'spur' } };
    const problem = soleProblem(file);
    // r_f = z/2 + x − h_fP* in modules (ISO 21771), to be 0.5 at least: z ≥ 6.8.
    expect(problem).toMatchObject({ parameter: 'sun.teeth', nearest: [7] });
  });
});

describe('the bore of the sun', () => {
  const root = gearSizes({
    teeth: 15,
    module: 1.5,
    pressureAngle: 20,
    helixAngle: 30,
    rack: { addendum: 1, dedendum: 1.25, fillet: 0.3 },
    profileShift: 0,
    internal: false,
  }).rootRadius;
  const corner = root - 2 * 0.45;

  // Corner radius of a hexagon: across flats / √3; of a square: across flats / √2 (plane geometry).
  it.each([
    ['round', 'diameter', 2 * corner],
    ['hexagon', 'acrossFlats', Math.sqrt(3) * corner],
    ['square', 'acrossFlats', Math.SQRT2 * corner],
  ])('%s keeps two lines of wall', (shape, key, most) => {
    const fits = Math.floor(most * 100) / 100;
    expect(planetary(resolveSpec(withValue('sun.bore', { shape, [key]: fits }))).sun.bore).toEqual({
      shape,
      [key]: fits,
    });
    const problem = soleProblem(withValue('sun.bore', { shape, [key]: fits + 0.02 }));
    expect(problem.parameter).toBe(`sun.bore.${key}`);
    expect(problem.nearest[0]).toBeLessThanOrEqual(most);
    expect(problem.nearest[0]).toBeGreaterThan(most - 0.005);
  });

  it('keeps it where a wide gap deepens the root', () => {
    const file = withValue('sun.bore', { shape: 'round', diameter: 2 * corner - 0.01 });
    resolveSpec(file);
    // Clearance of the rack: 0.25 × 1.5 = 0.375 mm; a gap of 0.5 takes the rest, 0.125 mm, from the root.
    const { nearest } = soleProblem(withValue('fit.gap', 0.5, file));
    expect(nearest[0]).toBeCloseTo(2 * (corner - 0.125), 2);
  });

  it('D has its flat between the middle and the far side', () => {
    const bore = (acrossFlat: number) => withValue('sun.bore', { shape: 'D', diameter: 6, acrossFlat });
    expect(planetary(resolveSpec(bore(5))).sun.bore).toEqual({ shape: 'D', diameter: 6, acrossFlat: 5 });
    expect(soleProblem(bore(2))).toMatchObject({ parameter: 'sun.bore.acrossFlat', nearest: [3] });
    expect(soleProblem(bore(6))).toMatchObject({ parameter: 'sun.bore.acrossFlat', nearest: [5.88] });
  });

  it('is refused altogether where the sun is too small for any', () => {
    const file = { ...spinner(), module: 0.5, sun: { teeth: 6, bore: { shape: 'round', diameter: 1 } } };
    expect(soleProblem(file)).toMatchObject({ parameter: 'sun.bore', nearest: [{ shape: 'none' }] });
  });

  it('wants a known shape with its own sizes', () => {
    expect(soleProblem(withValue('sun.bore', { shape: 'hexagn', acrossFlats: 5 }))).toMatchObject({
      parameter: 'sun.bore.shape',
      nearest: ['hexagon'],
    });
    expect(soleProblem(withValue('sun.bore', { acrossFlats: 5 }))).toMatchObject({
      parameter: 'sun.bore.shape',
      value: undefined,
      nearest: ['hexagon', 'square'],
    });
  });
});

describe('variants', () => {
  it.each<[unknown, string]>([
    [{ module: [] }, 'variants.module'],
    [{ module: 2 }, 'variants.module'],
    [{ modul: [2] }, 'variants.modul'],
    [{}, 'variants'],
    [[], 'variants'],
    ['all', 'variants'],
    [[{ 'sun.tooth': 3 }], 'variants.0.sun.tooth'],
    [[3], 'variants.0'],
    [{ kind: ['planetary'] }, 'variants.kind'],
    [{ module: Array(200).fill(1), faceWidth: Array(200).fill(20) }, 'variants'],
  ])('%j is refused at %s', (variants, parameter) => {
    expect(soleProblem(withValue('variants', variants)).parameter).toBe(parameter);
  });
});

import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { planetary } from '../sets.js';
import { problemsOf, soleProblem, spinner, withValue } from './table.js';

const printerOf = (printer: unknown) => resolveSpec({ ...spinner(), printer }).printer;
const filamentOf = (filament: unknown) => resolveSpec({ ...spinner(), filament }).filament;

describe('shipped printers', () => {
  it('are taken by name, alone or with values of the file’s own that win', () => {
    const large = { nozzle: 0.6, layer: 0.3, bed: { width: 300, depth: 300, height: 400 } };
    expect(printerOf('large')).toMatchObject({
      profile: 'large',
      ...large,
      lineWidth: expect.closeTo(0.675, 12),
    });
    expect(printerOf({ profile: 'large' })).toEqual(printerOf('large'));
    expect(printerOf({ profile: 'large', nozzle: 0.4, bed: { height: 200 } })).toMatchObject({
      nozzle: 0.4,
      layer: 0.3,
      lineWidth: 0.45,
      bed: { width: 300, depth: 300, height: 200 },
    });
  });

  it('usual is what a file without one gets, and none of them compensates anything', () => {
    expect(printerOf('usual')).toEqual(resolveSpec(spinner()).printer);
    for (const name of ['usual', 'small', 'large', 'fine']) expect(printerOf(name).growth).toBe(0);
  });

  it('still hold to the rules between values', () => {
    expect(soleProblem({ ...spinner(), printer: { profile: 'large', nozzle: 0.2 } })).toMatchObject({
      parameter: 'printer.layer',
      value: 0.3,
      nearest: [0.2],
    });
  });

  it('are refused under other names, offering the nearest', () => {
    expect(soleProblem({ ...spinner(), printer: 'smal' })).toMatchObject({
      parameter: 'printer',
      nearest: ['small'],
    });
    expect(soleProblem(withValue('printer.profile', 'fien'))).toMatchObject({
      parameter: 'printer.profile',
      nearest: ['fine'],
    });
    expect(problemsOf({ ...spinner(), printer: 'constructor' })).toHaveLength(1);
    expect(problemsOf(withValue('printer.profile', 'toString'))).toHaveLength(1);
  });
});

describe('shipped filaments', () => {
  it('fill what is typical of a material, and never shrinkage', () => {
    expect(filamentOf('PETG')).toMatchObject({ material: 'PETG', modulus: 2000, glassTransition: 75 });
    expect(filamentOf({ material: 'ABS', modulus: 1800 })).toMatchObject({
      modulus: 1800,
      glassTransition: 100,
    });
    for (const name of ['PLA', 'PETG', 'ABS', 'ASA']) {
      const filament = filamentOf(name);
      expect(filament.shrinkage).toBe(0);
      // Drying below the glass transition: common practice, and a caution of every sheet.
      expect(filament.dryingTemperature).toBeLessThan(filament.glassTransition);
    }
  });

  it('are refused under other names, offering the nearest', () => {
    expect(soleProblem({ ...spinner(), filament: 'petg' })).toMatchObject({ nearest: ['PETG'] });
    expect(soleProblem(withValue('filament.material', 'PLS'))).toMatchObject({ nearest: ['PLA'] });
  });
});

describe('resolving again', () => {
  it('changes nothing, whatever was named', () => {
    for (const printer of ['small', { profile: 'large', bed: { width: 200 }, growth: -0.05 }])
      for (const filament of ['ASA', { material: 'PETG', shrinkage: 0.4 }])
        for (const opening of [undefined, {}, { max: 4, edge: 30 }]) {
          const once = resolveSpec({ ...spinner(), printer, filament, opening });
          expect(resolveSpec(once)).toEqual(once);
        }
  });

  it('asks nothing of the opening unless the file does', () => {
    expect(resolveSpec(spinner())).not.toHaveProperty('opening');
    expect(planetary(resolveSpec(withValue('opening.max', 4))).opening).toEqual({ max: 4 });
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as cogweave from '../lib/index.js';

const minimal = {
  kind: 'planetary',
  module: 1.5,
  faceWidth: 8,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 5 },
};

describe('the public surface', () => {
  it('has every function that is promised, flat', () => {
    for (const name of [
      'readSpec',
      'resolveSpec',
      'planSets',
      'toothProfile',
      'buildSet',
      'inspectSet',
      'toGeom3',
      'fromGeom3',
      'encodeStl',
      'encode3mf',
      'drawSet',
      'readTrialLog',
      'addTrial',
      'adviseTrials',
      'readGaps',
      'proveCoupon',
      'makeCoupon',
    ])
      expect(cogweave, name).toHaveProperty(name, expect.any(Function));
  });

  it('carries the version of the package', () => {
    const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
    expect(cogweave.version).toBe(version);
  });

  it('goes from a parameter object to a sheet and a file', () => {
    const spec = cogweave.resolveSpec(minimal);
    expect(cogweave.inspectSet(spec).checks.filter(({ holds, level }) => !holds && level === 'must')).toEqual(
      [],
    );
    const parts = cogweave.buildSet(spec);
    expect(parts.map(({ name }) => name)).toEqual([
      'sun',
      'planet-1',
      'planet-2',
      'planet-3',
      'planet-4',
      'planet-5',
      'ring',
    ]);
    const triangles = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
    expect(cogweave.encodeStl(parts).length).toBe(84 + 50 * triangles);
  });

  it('refuses with one class of error that names parameter, value, rule and what works', () => {
    expect(() => cogweave.resolveSpec({ ...minimal, module: -1 })).toThrow(
      expect.objectContaining({ name: 'Refusal', parameter: 'module', value: -1, nearest: [0.2] }),
    );
  });
});

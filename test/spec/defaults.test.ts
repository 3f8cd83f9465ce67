import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { planetary } from '../sets.js';
import { spinner, withValue } from './table.js';

describe('defaults', () => {
  it('fills in the least file', () => {
    expect(resolveSpec(spinner())).toEqual({
      name: 'planetary-set',
      kind: 'planetary',
      module: 1.5,
      pressureAngle: 20,
      rack: { addendum: 1, dedendum: 1.25, fillet: 0.3 },
      helix: { form: 'herringbone', angle: 30, hand: 'right' },
      faceWidth: 20,
      bevel: { angle: 45, size: 1.75 },
      profileShift: 'none',
      shiftBalance: 'sliding',
      sun: { teeth: 15, profileShift: 0, bore: { shape: 'none' } },
      planets: { teeth: 15, count: 5, spacing: 'equal', profileShift: 0 },
      ring: { teeth: 45, profileShift: 0, rim: 1.2 * 2.25 * 1.5 },
      fit: { gap: 0.25, gapShare: 0.5 },
      printer: {
        profile: 'usual',
        nozzle: 0.4,
        layer: 0.2,
        lineWidth: 0.45,
        bed: { width: 220, depth: 220, height: 250 },
        growth: 0,
        firstLayerGrowth: 0.15,
      },
      filament: {
        material: 'PLA',
        shrinkage: 0,
        modulus: 2000,
        strength: 40,
        poisson: 0.36,
        glassTransition: 55,
        dryingTemperature: 45,
      },
      carrier: 'none',
      retention: 'herringbone',
      tolerance: 0.01,
      limits: {
        contactRatio: 1.2,
        toothFeature: 0.45,
        wall: 0.9,
        rim: 1.2 * 2.25 * 1.5,
        pinchForce: 50,
        sunTorque: 0.5,
        tilt: (Math.atan2(1.5, 20) * 180) / Math.PI,
        axialPlay: 5,
        overhangAngle: 45,
        overhangArea: 10,
        bridge: 10,
        thinness: 25,
      },
    });
  });

  it('goes by the form of the helix', () => {
    const helixOf = (form: string) => {
      const { helix, retention } = planetary(resolveSpec(withValue('helix', { form })));
      return [helix.angle, retention];
    };
    expect(helixOf('herringbone')).toEqual([30, 'herringbone']);
    expect(helixOf('helical')).toEqual([20, 'none']);
    expect(helixOf('spur')).toEqual([0, 'none']);
  });

  it('takes a transverse module: m_n = m_t cos β (ISO 21771)', () => {
    const file = {
      ...spinner(),
      module: undefined,
      transverseModule: 2,
      helix: { form: 'helical', angle: 25 },
    };
    const spec = resolveSpec(file);
    expect(spec.module).toBeCloseTo(2 * Math.cos((25 * Math.PI) / 180), 9);
    expect(spec).not.toHaveProperty('transverseModule');
  });

  it('gives the ring the shift that keeps one centre distance, only where the counts do', () => {
    const file = spinner();
    file.sun.profileShift = 0.2;
    file.planets.profileShift = -0.1;
    expect(planetary(resolveSpec(file)).ring.profileShift).toBeCloseTo(0, 12);
    file.planets.profileShift = 0.3;
    expect(planetary(resolveSpec(file)).ring.profileShift).toBeCloseTo(0.8, 12);
    file.ring = { teeth: 46 };
    expect(planetary(resolveSpec(file)).ring.profileShift).toBe(0);
    file.ring = { teeth: 45, profileShift: 0.5 };
    expect(planetary(resolveSpec(file)).ring.profileShift).toBe(0.5);
  });

  it('keeps thin sets and fine nozzles within their own limits', () => {
    expect(resolveSpec(withValue('faceWidth', 4)).bevel.size).toBeCloseTo(0.8, 12);
    expect(resolveSpec(withValue('printer', { nozzle: 0.2 })).printer).toMatchObject({
      nozzle: 0.2,
      layer: 0.1,
      lineWidth: 1.125 * 0.2,
    });
    expect(planetary(resolveSpec(withValue('module', 0.5))).ring.rim).toBe(3);
  });

  it('reads `none` for a bore as its mapping', () => {
    expect(planetary(resolveSpec(withValue('sun.bore', 'none'))).sun.bore).toEqual({ shape: 'none' });
  });

  it('names the set after the file, cleaned where the file’s name cannot stand', () => {
    expect(resolveSpec(spinner(), 'coaster').name).toBe('coaster');
    expect(resolveSpec({ ...spinner(), name: 'Drehtisch Übung 3' }, 'coaster').name).toBe(
      'Drehtisch Übung 3',
    );
    expect(resolveSpec(spinner(), 'spinner (2)*').name).toBe('spinner -2-');
    expect(resolveSpec(spinner(), '...').name).toBe('planetary-set');
    expect(resolveSpec(spinner(), '遊'.repeat(100)).name).toBe('遊'.repeat(66));
  });

  it('leaves variants out of what is resolved', () => {
    const plain = resolveSpec(spinner());
    expect(resolveSpec(withValue('variants', { module: [1, 2], 'fit.gap': [0.2] }))).toEqual(plain);
    expect(resolveSpec(withValue('variants', [{ module: 2 }, { 'sun.teeth': 12 }]))).toEqual(plain);
  });

  it('does not change what it is given', () => {
    const file = { ...spinner(), sun: { teeth: 15, bore: 'none' } };
    const before = structuredClone(file);
    resolveSpec(file);
    expect(file).toEqual(before);
  });
});

import { describe, expect, it } from 'vitest';
import { pin } from '../../../lib/proof/checks/pin.js';
import { inspectSet } from '../../../lib/proof/proveSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import type { Carrier, PlanetarySpec } from '../../../lib/spec/types.js';
import { outlinesOf } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const carried = (carrier: object, more: object = {}) =>
  setOf(15, 15, 45, 3, { faceWidth: 8, tolerance: 0.05, carrier: { plates: 'both', ...carrier }, ...more });
const checkOf = (spec: PlanetarySpec, id: string) => inspectSet(spec).checks.find((one) => one.id === id)!;

/** The check alone, without building anything. */
const pinOf = (spec: PlanetarySpec) => pin(outlinesOf(spec))[0];

describe('a pin', () => {
  const asked = (sunTorque: number, carrier: object = {}) =>
    carried({ form: 'pins', ...carrier }, { limits: { sunTorque } });

  it('says how and at what torque it breaks, of what, and what a tooth does first', () => {
    const found = pinOf(asked(0.01));
    expect(found).toMatchObject({ holds: true, level: 'should', limit: 0.01, unit: 'N m' });
    expect(found.says).toMatch(
      /breaks in (bending|shear) .* N m on the sun, at 0\.5 × \d+ MPa across the layers of PLA; a tooth skips at/,
    );
    expect(found.says).not.toMatch(/are asked/);
    const { value } = found;
    expect(pinOf(asked(value!)).holds).toBe(true);
    expect(pinOf(asked(value! * 1.001)).holds).toBe(false);
  });

  // Short pins between two plates break in shear, long ones in bending, and thicker ones gain less in shear.
  it.each([
    ['between two plates', {}, 6],
    ['between plates far apart', {}, 30],
    ['on one plate', { plates: 'below' }, 20],
    ['with a waist', { pin: { diameter: 5, form: 'waisted', depth: 0.8 } }, 20],
    ['of a barrel', { pin: { diameter: 5, form: 'barrelled', depth: 0.8 } }, 8],
  ])(
    '%s: what is offered bears the torque that is asked, and no thinner one does',
    (_, carrier, faceWidth) => {
      const of = (sunTorque: number, other: object = {}) =>
        carried(
          { form: 'pins', pin: { diameter: 4 }, ...carrier, ...other },
          { faceWidth, limits: { sunTorque } },
        );
      const limit = 1.8 * pinOf(of(0.01)).value!;
      const weak = pinOf(of(limit));
      expect(weak).toMatchObject({ holds: false, level: 'should' });
      const [, offered] = /carrier\.pin\.diameter ([\d.]+)/.exec(weak.says)!;
      const withPin = (diameter: number) => {
        const { pin: drawn } = of(limit).carrier as Carrier;
        return pinOf(of(limit, { pin: { ...drawn, diameter } }));
      };
      expect(withPin(Number(offered)).holds).toBe(true);
      expect(withPin(Number(offered) - 0.1).holds).toBe(false);
      const both = /carrier\.plates both/.test(weak.says);
      if (both) expect(pinOf(of(limit, { plates: 'both' })).holds).toBe(true);
      expect(both).toBe('plates' in carrier);
    },
  );

  it('is offered nothing where no pin in these planets bears it', () => {
    expect(pinOf(asked(900)).says).toMatch(/no pin that the planets have room for bears them$/);
  });

  it('stands twice the torque of twice the strength', () => {
    const of = (strength: number) => pinOf(carried({ form: 'pins' }, { filament: { strength } })).value!;
    expect(of(60) / of(30)).toBeCloseTo(2, 9);
  });
});

it('there is nothing to say of pins or plates where there are none', () => {
  const ids = inspectSet(setOf(15, 15, 45, 3, { faceWidth: 8, tolerance: 0.05 })).checks.map(({ id }) => id);
  expect(ids).not.toContain('pin');
  expect(ids).not.toContain('plate-clearance');
  expect(ids).not.toContain('mount');
  const cage = inspectSet(carried({ form: 'cage' })).checks.map(({ id }) => id);
  expect(cage).not.toContain('pin');
  expect(cage).toContain('plate-clearance');
});

it('plates stand off sun and ring by the lesser of their gaps beside and along the axis', () => {
  for (const [gap, axialGap] of [
    [0.3, 2],
    [0.6, 1],
  ]) {
    const found = checkOf(carried({ form: 'pins', gap, axialGap }), 'plate-clearance');
    const least = Math.min(gap, axialGap * 0.2);
    expect(found).toMatchObject({ holds: true, level: 'must', unit: 'mm' });
    expect(found.value! - least).toBeGreaterThan(-0.05);
    expect(found.says).toContain(`${least.toFixed(3)} mm drawn between them at least`);
    expect(found.says).toMatch(/from the sun.*from the ring/);
  }
});

describe('a panel mount', () => {
  const mounted = (hole: number) =>
    setOf(15, 15, 45, 3, { faceWidth: 20, tolerance: 0.05, ring: { rim: 6, mount: { hole, panel: 12 } } });
  // ISO 21771: root circle of the ring z m_t + 2 h_f, 45 · 1.5 / cos 30° + 2 · 1.25 · 1.5, and the rim of 6 mm twice.
  const outer = (45 * 1.5) / Math.cos(Math.PI / 6) + 3.75 + 12;

  it('goes through its hole with the clearance all round', () => {
    const spec = mounted(98);
    const { clearance } = spec.ring.mount!;
    const found = checkOf(spec, 'mount');
    expect(found).toMatchObject({ holds: true, level: 'must', limit: clearance });
    expect(found.value).toBeCloseTo((98 - outer) / 2, 6);
  });

  it('is refused in a smaller one, and the hole offered works', () => {
    const file = mounted(98);
    const small = {
      ...file,
      ring: { ...file.ring, mount: { ...file.ring.mount!, hole: Math.floor(outer * 10) / 10 } },
    };
    let found: { holds: boolean; says: string };
    try {
      found = checkOf(resolveSpec(small), 'mount');
    } catch (error) {
      // Refused as the file is read, with the same offer.
      const [offer] = (error as { nearest: number[] }).nearest;
      expect(checkOf(mounted(offer), 'mount').holds).toBe(true);
      return;
    }
    expect(found.holds).toBe(false);
    const offer = Number(/ring\.mount\.hole ([\d.]+) works/.exec(found.says)![1]);
    expect(checkOf(mounted(offer), 'mount').holds).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { pinStrength } from '../../../lib/fit/carrier/pinStrength.js';
import { fitSet } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

/**
 * Against beam formulas as printed in Roark's Formulas for Stress and Strain and in Machinery's Handbook (from memory):
 * cantilever with end load M = W L; both ends built in, load in the middle M = W L / 8; solid round section
 * S = π d³ / 32 and greatest shear stress 4 V / (3 A).
 */
const load = { workingRadius: 11.25, planets: 3, strength: 40 };
const strengthOf = (carrier: object, faceWidth = 20) => {
  const spec = setOf(15, 15, 45, 3, { helix: { form: 'spur' }, faceWidth, carrier });
  return pinStrength(fitSet(spec).carrier!, faceWidth, load)!;
};
/** Stress in bending for one N m on the sun: force per pin 2 T / (N r). */
const force = 2000 / (3 * 11.25);
const section = (d: number) => (Math.PI * d ** 3) / 32;

describe('pin strength', () => {
  it('is that of a cantilever from one plate, loaded at mid face', () => {
    const arm = 10 + 2 * 0.2;
    for (const plates of ['below', 'above']) {
      const { breakingTorque, by } = strengthOf({ plates, pin: { diameter: 6 } });
      // A pin from above reaches down to the bed, and so bends from its plate just the same.
      expect(breakingTorque).toBeCloseTo(20 / ((force * arm) / section(6)), 6);
      expect(by).toBe('bending');
    }
  });

  it('is that of a beam built in at both ends between two plates', () => {
    const length = 20 + 4 * 0.2;
    const { breakingTorque } = strengthOf({ plates: 'both', pin: { diameter: 6 } });
    expect(breakingTorque).toBeCloseTo(20 / ((force * length) / 8 / section(6)), 6);
  });

  it('looks at the waist, and at the ends of a barrel', () => {
    const length = 20 + 4 * 0.2;
    for (const form of ['waisted', 'barrelled']) {
      const found = strengthOf({ plates: 'both', pin: { diameter: 6, form, depth: 1 } });
      expect(found.breakingTorque, form).toBeCloseTo(20 / ((force * length) / 8 / section(4)), 6);
      expect(found.at === 10, form).toBe(form === 'waisted');
    }
  });

  it('breaks short thick pins in shear: stress 4 V / (3 A) against strength / √3', () => {
    const { breakingTorque, by } = strengthOf({ plates: 'both', pin: { diameter: 10 } }, 2.4);
    const area = (Math.PI * 100) / 4;
    expect(by).toBe('shear');
    expect(breakingTorque).toBeCloseTo(20 / Math.sqrt(3) / ((4 * force) / 2 / (3 * area)), 6);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degrees, gearSizes, radians } from '../../lib/tooth/gear.js';
import { evenly } from '../evenly.js';
import { gear, ring } from './gears.js';

describe('transverse sizes', () => {
  it('agree with the other forms of the same ISO 21771 relations', () => {
    const anyGear = fc.record({
      teeth: fc.integer({ min: 5, max: 400 }),
      helixAngle: evenly(0, 45),
      pressureAngle: evenly(14, 30),
      module: evenly(0.2, 20),
      profileShift: evenly(-1, 1.5),
    });
    fc.assert(
      fc.property(anyGear, (changes) => {
        const sizes = gearSizes(gear(changes.teeth, changes));
        const { helixAngle, transversePressureAngle, baseHelixAngle, normalPressureAngle } = sizes;
        const equal = (a: number, b: number) =>
          expect(Math.abs(a - b)).toBeLessThan(1e-12 * Math.abs(a) + 1e-13);
        equal(Math.tan(baseHelixAngle), Math.tan(helixAngle) * Math.cos(transversePressureAngle));
        equal(
          Math.cos(baseHelixAngle) * Math.cos(transversePressureAngle),
          Math.cos(helixAngle) * Math.cos(normalPressureAngle),
        );
        // One lead for reference and base helix: p_z = 2π r / tan β.
        equal(sizes.referenceRadius * Math.tan(baseHelixAngle), sizes.baseRadius * Math.tan(helixAngle));
      }),
    );
  });

  it('a ring turns addendum and dedendum round, and its space has the flanks of the external tooth', () => {
    const outer = gearSizes(ring(45, { module: 2, profileShift: 0.3 }));
    const same = gearSizes(gear(45, { module: 2, profileShift: 0.3 }));
    expect([outer.tipRadius, outer.rootRadius]).toEqual([45 + 0.6 - 2, 45 + 0.6 + 2.5]);
    expect(outer.halfThicknessAngle).toBe(same.halfThicknessAngle);
    expect(outer.baseRadius).toBe(same.baseRadius);
  });

  it('angles convert both ways', () => {
    expect(degrees(radians(33.5))).toBeCloseTo(33.5, 13);
    expect(radians(180)).toBe(Math.PI);
  });
});

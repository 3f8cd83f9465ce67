import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gearSizes } from '../../lib/tooth/gear.js';
import { halfThicknessAngle, tipThickness, transverseThickness } from '../../lib/tooth/thickness.js';
import { evenly } from '../evenly.js';
import { distanceToFlank, flankPoint } from './flanks.js';
import { gear, ring } from './gears.js';

describe('tooth thickness', () => {
  it('is the angle of the parametric involute at any radius', () => {
    for (const measured of [
      gear(20),
      gear(17, { profileShift: 0.4, helixAngle: 25 }),
      ring(45, { profileShift: 0.2 }),
    ])
      for (const roll of [0.1, 0.3, 0.45]) {
        const [x, y] = flankPoint(measured, roll);
        const half = halfThicknessAngle(measured, Math.hypot(x, y));
        const space = measured.internal ? half : Math.PI / measured.teeth - half;
        expect(Math.atan2(y, x)).toBeCloseTo(space, 12);
      }
  });

  it('a relief is the normal distance between the two flanks, spur or helical', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 30), fc.boolean(), evenly(0.02, 0.2), (helixAngle, internal, relief) => {
        const measured = gear(31, { module: 1.5, helixAngle, internal });
        const radius = gearSizes(measured).referenceRadius;
        const half = halfThicknessAngle(measured, radius, relief);
        const angle = internal ? half : Math.PI / measured.teeth - half;
        const point = [radius * Math.cos(angle), radius * Math.sin(angle), 0] as const;
        expect(distanceToFlank(measured, point, helixAngle ? 0.5 : 0)).toBeCloseTo(relief, 6);
      }),
      { numRuns: 20 },
    );
  });

  it('tooth and space make up a pitch, in a gear and its ring', () => {
    const [external, internal] = [gear(45), ring(45)];
    const radius = 22;
    const pitch = (2 * Math.PI * radius) / 45;
    expect(transverseThickness(external, radius) + transverseThickness(internal, radius)).toBeCloseTo(
      pitch,
      12,
    );
    expect(transverseThickness(external, 22.5)).toBeCloseTo(Math.PI / 2, 12);
  });

  it('both kinds of tooth get thinner with relief and towards the tip', () => {
    for (const measured of [gear(30), ring(45)]) {
      const { tipRadius, referenceRadius } = gearSizes(measured);
      expect(transverseThickness(measured, referenceRadius, 0.1)).toBeLessThan(
        transverseThickness(measured, referenceRadius),
      );
      expect(tipThickness(measured)).toBe(transverseThickness(measured, tipRadius));
      expect(tipThickness(measured)).toBeLessThan(transverseThickness(measured, referenceRadius));
      expect(tipThickness(measured, referenceRadius, 0.1)).toBe(
        transverseThickness(measured, referenceRadius, 0.1),
      );
    }
  });

  it('a tooth shifted too far comes to a point', () => {
    expect(tipThickness(gear(8, { profileShift: 0.7 }))).toBeLessThan(0);
  });
});

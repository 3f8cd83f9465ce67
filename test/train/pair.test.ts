import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { gearSizes } from '../../lib/tooth/gear.js';
import { transverseThickness } from '../../lib/tooth/thickness.js';
import { centreDistance, pairSizes, shiftSum, workingPressureAngle } from '../../lib/train/pair.js';
import { evenly } from '../evenly.js';
import { gear, ring } from '../tooth/gears.js';

const anyPair = fc
  .record({
    first: fc.integer({ min: 8, max: 60 }),
    second: fc.integer({ min: 8, max: 60 }),
    shift1: evenly(-0.2, 0.8),
    shift2: evenly(-0.2, 0.8),
    helixAngle: evenly(0, 40),
    module: evenly(0.5, 4),
    internal: fc.boolean(),
  })
  .map(({ first, second, shift1, shift2, internal, ...shared }) => {
    const one = gear(first, { ...shared, profileShift: shift1 });
    if (!internal) return [one, gear(second, { ...shared, profileShift: shift2 })] as const;
    // A ring with the larger shift keeps the working angle real whatever the tooth difference.
    return [one, ring(first + second, { ...shared, profileShift: shift1 + Math.abs(shift2) })] as const;
  });

describe('two gears in mesh', () => {
  it('meet without backlash: on the working circles tooth and space are equally wide', () => {
    fc.assert(
      fc.property(anyPair, ([one, two]) => {
        const angle = workingPressureAngle(one, two);
        const radius1 = gearSizes(one).baseRadius / Math.cos(angle);
        const radius2 = gearSizes(two).baseRadius / Math.cos(angle);
        const distance = two.internal ? radius2 - radius1 : radius2 + radius1;
        expect(centreDistance(one, two)).toBeCloseTo(distance, 9);
        const pitch = (2 * Math.PI * radius1) / one.teeth;
        const thicknesses = transverseThickness(one, radius1) + transverseThickness(two, radius2);
        expect(thicknesses).toBeCloseTo(pitch, 9);
      }),
    );
  });

  it('the centre distance gives the shifts back', () => {
    fc.assert(
      fc.property(anyPair, ([one, two]) => {
        const sum = two.internal ? two.profileShift - one.profileShift : one.profileShift + two.profileShift;
        expect(shiftSum(one, two, centreDistance(one, two))).toBeCloseTo(sum, 7);
      }),
    );
  });

  it('without shift it is the sum or difference of the reference radii', () => {
    expect(centreDistance(gear(15, { module: 1.5 }), gear(15, { module: 1.5 }))).toBeCloseTo(22.5, 12);
    expect(centreDistance(gear(15, { module: 1.5 }), ring(45, { module: 1.5 }))).toBeCloseTo(22.5, 12);
  });

  it('sizes as made replace the nominal ones', () => {
    const sizes = pairSizes(ring(45), gear(15), { tipRadius1: 8, formRadius2: 23 });
    expect(sizes).toMatchObject({ internal: true, teeth1: 15, teeth2: 45, tipRadius1: 8, formRadius2: 23 });
    expect(sizes.tipRadius2).toBe(21.5);
    expect(sizes.basePitch).toBeCloseTo(Math.PI * Math.cos(Math.PI / 9), 12);
  });
});

describe('pairs that cannot be', () => {
  const refusal = (act: () => unknown): Refusal => {
    try {
      act();
    } catch (error) {
      if (error instanceof Refusal) return error;
      throw error;
    }
    throw new Error('nothing was refused');
  };

  it('names what two mates must share', () => {
    const found = refusal(() => centreDistance(gear(15), gear(15, { helixAngle: 30 })));
    expect(found).toMatchObject({ parameter: 'helixAngle', value: 30, nearest: [0] });
  });

  it('refuses two rings, and a ring without teeth to spare', () => {
    expect(refusal(() => centreDistance(ring(45), ring(60))).rule).toMatch(/two rings/);
    expect(refusal(() => centreDistance(gear(45), ring(45)))).toMatchObject({ nearest: [46] });
  });

  it('offers the least shift that leaves a working angle', () => {
    const planet = gear(40);
    const found = refusal(() => centreDistance(planet, ring(42, { profileShift: -0.5 })));
    const least = found.nearest[0] as number;
    expect(() => centreDistance(planet, ring(42, { profileShift: least }))).not.toThrow();
    expect(() => centreDistance(planet, ring(42, { profileShift: least - 0.011 }))).toThrow(Refusal);
  });

  it('offers the least centre distance', () => {
    const found = refusal(() => shiftSum(gear(20), gear(20), 18));
    expect(found.nearest[0]).toBeGreaterThan(20 * Math.cos(Math.PI / 9));
    expect(() => shiftSum(gear(20), gear(20), found.nearest[0] as number)).not.toThrow();
  });
});

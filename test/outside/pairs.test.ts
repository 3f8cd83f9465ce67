import { describe, expect, it } from 'vitest';
import { degrees, type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { involute } from '../../lib/tooth/involute.js';
import { tipThickness, transverseThickness } from '../../lib/tooth/thickness.js';
import { overlapRatio, transverseContactRatio } from '../../lib/train/contactRatio.js';
import { centreDistance, pairSizes, shiftSum, workingPressureAngle } from '../../lib/train/pair.js';
import { gear, ring, transverseGear } from '../tooth/gears.js';

const angle = (first: Gear, second: Gear) => degrees(workingPressureAngle(first, second));
const contact = (first: Gear, second: Gear, made = {}) =>
  transverseContactRatio(pairSizes(first, second, made));
const within = (value: number, printed: number, room: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(room * 1.001);

// Elements of Metric Gear Technology 4.1 and 4.6: from memory, recomputed.
describe('external spur pair 12/24, module 3', () => {
  const plain = [gear(12, { module: 3 }), gear(24, { module: 3 })] as const;
  const shifted = [
    gear(12, { module: 3, profileShift: 0.6 }),
    gear(24, { module: 3, profileShift: 0.36 }),
  ] as const;

  it('standard sizes', () => {
    const [small, large] = plain.map(gearSizes);
    within(centreDistance(...plain), 54, 1e-9);
    within(2 * small.baseRadius, 33.829, 5e-4);
    within(2 * large.baseRadius, 67.658, 5e-4);
    expect([small.tipRadius, large.tipRadius, small.rootRadius, large.rootRadius]).toEqual([
      21, 39, 14.25, 32.25,
    ]);
    // The handbook's figure takes no notice of the undercut.
    within(contact(...plain), 1.5111, 5e-5);
  });

  it('profile-shifted: angle and centre distance', () => {
    within(involute(workingPressureAngle(...shifted)), 0.034316, 5e-7);
    within(angle(...shifted), 26.0886, 5e-5);
    within(centreDistance(...shifted), 56.4999, 5e-5);
    within(centreDistance(...shifted) / 3 - 18, 0.83329, 5e-5);
  });

  it('profile-shifted: roots, and the contact ratio with the handbook tips shortened by Σx − y', () => {
    const [small, large] = shifted.map(gearSizes);
    within(2 * small.rootRadius, 32.1, 5e-4);
    within(2 * large.rootRadius, 66.66, 5e-4);
    const shortened = (0.96 - (centreDistance(...shifted) / 3 - 18)) * 3;
    within(2 * (small.tipRadius - shortened), 44.84, 5e-4);
    within(2 * (large.tipRadius - shortened), 79.4, 5e-4);
    const tips = { tipRadius1: small.tipRadius - shortened, tipRadius2: large.tipRadius - shortened };
    within(contact(...shifted, tips), 1.2021, 5e-5);
    // Thicknesses of the same pair: worked out from the formula, none printed.
    within(transverseThickness(shifted[0], 18), 6.0227, 5e-5);
    within(transverseThickness(shifted[1], 36), 5.4986, 5e-5);
    within(tipThickness(shifted[0], tips.tipRadius1), 1.264, 5e-5);
    within(tipThickness(shifted[1], tips.tipRadius2), 2.2132, 5e-5);
  });

  it('back from the centre distance', () => {
    within(shiftSum(...plain, 56.4999), 0.96, 5e-5);
  });
});

// Elements of Metric Gear Technology 6.10: sizes from memory, recomputed; contact ratios recomputed.
describe('helical pair 12/60', () => {
  const pair = [
    gear(12, { module: 3, helixAngle: 30, profileShift: 0.09809 }),
    gear(60, { module: 3, helixAngle: 30 }),
  ] as const;

  it('normal system', () => {
    const [small, large] = pair.map(gearSizes);
    within(degrees(small.transversePressureAngle), 22.79588, 5e-6);
    within(degrees(small.baseHelixAngle), 28.02432, 5e-6);
    within(involute(workingPressureAngle(...pair)), 0.023405, 5e-7);
    within(angle(...pair), 23.1126, 5e-5);
    within(centreDistance(...pair), 125, 5e-4);
    within(2 * small.referenceRadius, 41.569, 5e-4);
    within(2 * large.referenceRadius, 207.846, 5e-4);
    within(2 * small.baseRadius, 38.322, 5e-4);
    within(2 * large.baseRadius, 191.611, 5e-4);
    within(2 * small.rootRadius, 34.658, 6e-4);
    within(2 * large.rootRadius, 200.346, 5e-4);
    within(contact(...pair, { tipRadius1: 48.154 / 2, tipRadius2: 213.842 / 2 }), 1.2939, 2e-4);
    within(overlapRatio(pair[0], 30), 1.5915, 5e-5);
    within(shiftSum(...pair, 125), 0.09809, 5e-6);
  });

  it('transverse system', () => {
    const given = { module: 3, pressureAngle: 20, helixAngle: 30 };
    const small = transverseGear(12, { ...given, profileShift: 0.34462 });
    const large = transverseGear(60, { ...given, profileShift: 0 });
    within(involute(workingPressureAngle(small, large)), 0.0183886, 5e-8);
    within(angle(small, large), 21.3975, 5e-5);
    within(centreDistance(small, large), 109, 5e-5);
  });

  // ISO 21771, sum of profile shifts for a given centre distance: worked out from the formula, none printed.
  it('31/30 at 116.5 mm', () => {
    const helixAngle = degrees(Math.acos((3.5 * 61) / 2 / 114.3447280708));
    const first = gear(31, { module: 3.5, helixAngle });
    within(shiftSum(first, { ...first, teeth: 30 }, 116.5), 0.651877131, 5e-9);
  });
});

// Elements of Metric Gear Technology 5.1: from memory, recomputed.
describe('internal pair 16/24, module 3, ring shifted by 0.5', () => {
  const planet = gear(16, { module: 3 });
  const outer = ring(24, { module: 3, profileShift: 0.5 });

  it('angle, centre distance, sizes', () => {
    within(involute(workingPressureAngle(planet, outer)), 0.060401, 5e-7);
    within(angle(planet, outer), 31.0936, 1e-4);
    within(centreDistance(planet, outer), 13.1683, 5e-5);
    within(2 * gearSizes(planet).tipRadius, 54, 1e-9);
    within(2 * gearSizes(outer).tipRadius, 69, 1e-9);
    within(2 * gearSizes(outer).rootRadius, 82.5, 5e-9);
    within(2 * gearSizes(outer).baseRadius, 67.658, 5e-4);
    within(contact(planet, outer), 1.679, 5e-4);
  });

  it('the order of the two does not matter, and the shift comes back', () => {
    expect(centreDistance(outer, planet)).toBe(centreDistance(planet, outer));
    expect(pairSizes(outer, planet)).toEqual(pairSizes(planet, outer));
    within(shiftSum(planet, outer, 13.1683), 0.5, 5e-5);
  });
});

describe('textbook examples in inches', () => {
  const inch = 25.4;
  it('Mott, spur pair 11/18 at pitch 12 (read on p. 320 of the 4th edition)', () => {
    const pair = [gear(11, { module: inch / 12 }), gear(18, { module: inch / 12 })] as const;
    within(centreDistance(...pair) / inch, 1.2083, 5e-5);
    within((2 * gearSizes(pair[0]).baseRadius) / inch, 0.8614, 5e-5);
    within((2 * gearSizes(pair[1]).baseRadius) / inch, 1.4095, 5e-5);
    within(transverseThickness(pair[0], (11 * inch) / 24) / inch, 0.1309, 5e-5);
  });

  it('Shigley 13-1, 16/40 at pitch 2, centre distance 14 in moved to 14.25 (from memory, recomputed)', () => {
    const pair = [gear(16, { module: inch / 2 }), gear(40, { module: inch / 2 })] as const;
    within(centreDistance(...pair) / inch, 14, 1e-9);
    const moved = shiftSum(...pair, 14.25 * inch);
    const wide = [{ ...pair[0], profileShift: moved }, pair[1]] as const;
    // The book prints 22.56°, from base radii rounded to two places.
    within(angle(...wide), 22.601, 5e-4);
    within(gearSizes(pair[0]).baseRadius / Math.cos(workingPressureAngle(...wide)) / inch, 8.143 / 2, 5e-4);
  });

  it('Norton 12-1, 19/37 at pitch 6, and 2 % apart (from memory, recomputed)', () => {
    const pair = [gear(19, { module: inch / 6 }), gear(37, { module: inch / 6 })] as const;
    within(contact(...pair), 1.621, 5e-4);
    const moved = shiftSum(...pair, centreDistance(...pair) * 1.02);
    const wide = [{ ...pair[0], profileShift: moved }, pair[1]] as const;
    within(angle(...wide), 22.89, 5e-3);
    const tipRadius1 = gearSizes(pair[0]).tipRadius;
    within(contact(...wide, { tipRadius1 }), 1.102, 5e-4);
  });

  // Worked out from the formula apart from this project, full-depth teeth at 20°; 12/60 takes no notice of undercut.
  it.each([
    [20, 20, 1.5568],
    [17, 17, 1.5148],
    [20, 40, 1.6352],
    [12, 60, 1.6025],
  ])('contact ratio %d/%d', (first, second, ratio) => {
    within(contact(gear(first), gear(second)), ratio, 5e-5);
  });

  it.each([
    [30, 80, 1.938],
    [24, 72, 1.9306],
    [21, 57, 1.9706],
    [40, 60, 2.028],
    [20, 60, 1.9497],
    [18, 54, 1.9685],
    [16, 48, 2.0007],
    [12, 42, 2.0409],
  ])('contact ratio %d in a ring of %d, before any cut of the tips', (planet, outer, ratio) => {
    within(contact(gear(planet), ring(outer)), ratio, 5e-5);
  });
});

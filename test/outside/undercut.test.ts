import { describe, expect, it } from 'vitest';
import { degrees, gearSizes } from '../../lib/tooth/gear.js';
import { tipThickness } from '../../lib/tooth/thickness.js';
import { leastProfileShift, leastTeeth, straightDepth } from '../../lib/tooth/undercut.js';
import { gear } from '../tooth/gears.js';

describe('least teeth without undercut', () => {
  // 32 at 14.5°: Mott 8-5, read. 18 at 20° and 14 for the 20° stub tooth: read. 12 at 25°: Shigley and Mott, from
  // memory. Decimals and the other rows recomputed. (Some handbooks print 17 at 20°.)
  it.each([
    [14.5, 1, 31.9029, 32],
    [17.5, 1, 22.118, 23],
    [20, 1, 17.0973, 18],
    [20, 0.8, 13.6778, 14],
    [22.5, 1, 13.6569, 14],
    [25, 1, 11.1978, 12],
    [30, 1, 8, 8],
  ])('%d°, addendum %d: %d', (pressureAngle, addendum, exact, whole) => {
    const least = leastTeeth(gear(20, { pressureAngle, rack: { addendum, dedendum: 1.25, fillet: 0.2 } }));
    expect(Math.abs(least - exact)).toBeLessThan(5.1e-5);
    expect(Math.ceil(least - 1e-9)).toBe(whole);
  });

  // ISO 21771 angles and z_min = 2 cos β / sin² α_t: recomputed, no page claimed.
  it.each([
    [20, 10, 20.28356, 9.39129, 1.015427, 16.389],
    [20, 15, 20.6469, 14.0761, 1.035276, 15.538],
    [20, 20, 21.17283, 18.74724, 1.064178, 14.407],
    [20, 23.5, 21.64754, 22.00587, 1.090441, 13.478],
    [20, 25, 21.88023, 23.39896, 1.103378, 13.052],
    [20, 30, 22.79588, 28.02432, 1.154701, 11.538],
    [20, 45, 27.23631, 41.64114, Math.SQRT2, 6.752],
    [14.5, 30, 16.62699, 28.95181, 1.154701, 21.155],
  ])('helical %d°/%d°', (pressureAngle, helixAngle, transverse, base, module, least) => {
    const helical = gear(20, { pressureAngle, helixAngle });
    const sizes = gearSizes(helical);
    expect(Math.abs(degrees(sizes.transversePressureAngle) - transverse)).toBeLessThan(5.1e-6);
    expect(Math.abs(degrees(sizes.baseHelixAngle) - base)).toBeLessThan(5.1e-6);
    expect(Math.abs(sizes.transverseModule - module)).toBeLessThan(5.1e-7);
    expect(Math.abs(leastTeeth(helical) - least)).toBeLessThan(5.1e-4);
  });

  // DIN 3960 and 3992, handbooks: formula from memory, figures recomputed. Columns at 20°, 25° and 14.5°.
  it.each([
    [6, 0.64907, 0.46418, 0.81193],
    [8, 0.53209, 0.28558, 0.74924],
    [9, 0.4736, 0.19627, 0.71789],
    [10, 0.41511, 0.10697, 0.68655],
    [11, 0.35662, 0.01767, 0.6552],
    [12, 0.29813, -0.07164, 0.62386],
    [13, 0.23964, -0.16094, 0.59251],
    [14, 0.18116, -0.25024, 0.56117],
    [15, 0.12267, -0.33955, 0.52982],
    [16, 0.06418, -0.42885, 0.49848],
    [17, 0.00569, -0.51815, 0.46713],
  ])('least profile shift of %d teeth', (teeth, at20, at25, at14) => {
    for (const [pressureAngle, shift] of [
      [20, at20],
      [25, at25],
      [14.5, at14],
    ])
      expect(Math.abs(leastProfileShift(gear(teeth, { pressureAngle })) - shift)).toBeLessThan(5.1e-6);
  });
});

describe('the basic rack', () => {
  // ISO 53:1998: profile A's rounding, 0.38 m at a clearance of 0.25 m, leaves the flank straight over the whole
  // addendum. Figures from memory; clause 5 gives 0.25/(1 − sin 20°) = 0.37995.
  it('profile A is straight down to the addendum', () => {
    expect(straightDepth(gear(20))).toBeCloseTo(1, 4);
    const exact = { addendum: 1, dedendum: 1.25, fillet: 0.25 / (1 - Math.sin(Math.PI / 9)) };
    expect(straightDepth(gear(20, { rack: exact }))).toBeCloseTo(1, 12);
  });
});

// Largest profile shift that leaves a tip of 0, 0.2, 0.25 and 0.4 modules, at 20°: recomputed. The usual least tip
// of 0.2 m (0.4 m hardened) is DIN 3960, from memory.
describe('tip thickness', () => {
  it.each([
    [8, [0.566, 0.385, 0.336, 0.175]],
    [10, [0.7, 0.499, 0.444, 0.267]],
    [12, [0.82, 0.602, 0.543, 0.35]],
    [15, [0.983, 0.742, 0.677, 0.464]],
    [17, [1.083, 0.828, 0.759, 0.5335]],
    [20, [1.222, 0.948, 0.874, 0.631]],
    [30, [1.622, 1.294, 1.204, 0.914]],
  ])('%d teeth', (teeth, shifts) => {
    for (const [i, thickness] of [0, 0.2, 0.25, 0.4].entries()) {
      const at = (profileShift: number) => tipThickness(gear(teeth, { profileShift }));
      expect(at(shifts[i] - 0.00051)).toBeGreaterThan(thickness);
      expect(at(shifts[i] + 0.00051)).toBeLessThan(thickness);
    }
  });
});

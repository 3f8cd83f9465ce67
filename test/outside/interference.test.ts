import { describe, expect, it } from 'vitest';
import { degrees, type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { transverseContactRatio } from '../../lib/train/contactRatio.js';
import {
  largestMateTipRadius,
  leastRingTipRadius,
  trimmingMargin,
  trochoidMargin,
} from '../../lib/train/interference.js';
import { pairSizes } from '../../lib/train/pair.js';
import { gear, ring } from '../tooth/gears.js';

const near = (value: number, printed: number, room: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(room);

/** Handbook involute test of a planet in a ring: the ring's tips stay where the planet's involute can be. */
const clears = (planet: Gear, outer: Gear) =>
  gearSizes(outer).tipRadius >= leastRingTipRadius(pairSizes(planet, outer));

describe('internal pair 16/24, module 3, ring shifted by 0.5', () => {
  // Elements of Metric Gear Technology 5.1 and 5.2: tip pressure angles and margins recomputed from its formulas.
  const pair = pairSizes(gear(16, { module: 3 }), ring(24, { module: 3, profileShift: 0.5 }));

  it('tip pressure angles', () => {
    near(degrees(Math.acos(pair.baseRadius1 / pair.tipRadius1)), 33.3548, 5e-5);
    near(degrees(Math.acos(pair.baseRadius2 / pair.tipRadius2)), 11.3192, 5e-5);
  });

  it('misses the strict involute test by 0.0014, as the printed example does', () => {
    const least = leastRingTipRadius(pair);
    expect(least).toBeGreaterThan(pair.tipRadius2);
    const tip = Math.acos(pair.baseRadius2 / pair.tipRadius2);
    const handbook = 1 - Math.tan(tip) / Math.tan(pair.workingPressureAngle);
    near(handbook, 0.66809, 5e-6);
    // At the least tip radius the handbook's inequality z1/z2 ≥ 1 − tan α_a2 / tan α_w becomes an equality.
    const limit = Math.acos(pair.baseRadius2 / least);
    near(1 - Math.tan(limit) / Math.tan(pair.workingPressureAngle), 16 / 24, 1e-12);
  });

  it('trochoid and trimming margins', () => {
    near(trochoidMargin(pair), 0.0401, 5e-5);
    near(trimmingMargin(pair)!, 0.0081, 5e-5);
  });
});

// Elements of Metric Gear Technology 5.3, small differences on a planet of 50 teeth: angle and centre distance from
// memory, recomputed; contact ratio and margin recomputed (the print differs by up to 0.035 in contact ratio).
describe('rings with few more teeth than the planet', () => {
  it.each([
    [51, 1.0, 61.0605, 0.971, 1.107, 0.0211],
    [52, 0.6, 46.0324, 1.354, 1.514, 0.0067],
    [53, 0.4, 37.4155, 1.775, 1.727, 0.0028],
    [54, 0.3, 32.4521, 2.227, 1.833, 0.0027],
    [55, 0.2, 28.2019, 2.666, 1.925, 0.0015],
    [56, 0.11, 24.5356, 3.099, 1.997, 0.0002],
    [57, 0.06, 22.3755, 3.557, 2.029, 0.0004],
    [58, 0.01, 20.3854, 4.01, 2.053, 0.0003],
  ])('50 in %d', (teeth, profileShift, angle, distance, contact, margin) => {
    const planet = gear(50);
    const outer = ring(teeth, { profileShift });
    const pair = pairSizes(planet, outer);
    near(degrees(pair.workingPressureAngle), angle, 5.1e-5);
    near(pair.centreDistance, distance, 5.1e-4);
    near(transverseContactRatio(pair), contact, 5.1e-4);
    near(trochoidMargin(pair), margin, 5.1e-5);
    expect(clears(planet, outer)).toBe(true);
    // Such a planet enters along the axis only: no real solution up to 53 teeth, a negative margin from there.
    const trimming = trimmingMargin(pair);
    if (teeth <= 53) expect(trimming).toBeNull();
    else expect(trimming).toBeLessThan(0);
  });
});

describe('standard planets in standard rings at 20°', () => {
  // Derived from the handbook inequality apart from this project: limit of z1/z2, or null where none is tabulated.
  it.each([
    [30, 80, 0.2398, true],
    [24, 72, 0.2708, true],
    [21, 57, 0.3592, true],
    [40, 60, 0.337, true],
    [20, 60, 0.337, false],
    [18, 54, 0.3848, false],
    [16, 48, 0.45, false],
    [15, 63, null, false],
    [12, 42, 0.547, false],
  ])('%d in %d', (planet, outer, limit, passes) => {
    const pair = pairSizes(gear(planet), ring(outer));
    expect(clears(gear(planet), ring(outer))).toBe(passes);
    if (limit === null) return;
    const tip = Math.acos(pair.baseRadius2 / pair.tipRadius2);
    near(1 - Math.tan(tip) / Math.tan(pair.workingPressureAngle), limit, 5.1e-5);
  });

  it.each([
    [30, 80, 77.096],
    [20, 60, 58.018],
    [18, 54, 52.216],
    [16, 48, 46.414],
    [15, 63, 61.435],
    [12, 42, 40.779],
  ])('least ring tip diameter, %d in %d', (planet, outer, diameter) => {
    near(2 * leastRingTipRadius(pairSizes(gear(planet), ring(outer))), diameter, 5.1e-4);
  });

  // Derived: z2 ≥ (z1² sin² α − 4)/(2 z1 sin² α − 4); up to 17 planet teeth no ring clears, and from 34 ring teeth
  // on (Elements of Metric Gear Technology 5.1, from memory) its tips are outside its base circle.
  it.each([
    [18, 161],
    [19, 86],
    [20, 64],
    [21, 53],
    [22, 46],
    [24, 40],
    [25, 38],
    [27, 36],
    [28, 35],
    [30, 34],
  ])('least ring for a planet of %d: %d', (planet, outer) => {
    const works = (teeth: number) =>
      gearSizes(ring(teeth)).tipRadius >= gearSizes(ring(teeth)).baseRadius &&
      clears(gear(planet), ring(teeth));
    expect(works(outer)).toBe(true);
    expect(works(outer - 1)).toBe(false);
  });

  it('no full ring clears a planet of 17 or fewer', () => {
    for (let planet = 8; planet <= 17; planet++)
      for (let outer = planet + 8; outer <= 400; outer++)
        expect(clears(gear(planet), ring(outer)), `${planet} in ${outer}`).toBe(false);
  });
});

describe('least tooth differences', () => {
  const least = (holds: (outer: Gear) => boolean, from: number) => {
    let teeth = from;
    while (!holds(ring(teeth))) teeth++;
    return teeth;
  };

  // Elements of Metric Gear Technology 5.2 tells of trouble below 9: from memory, recomputed with full addenda.
  it('trochoid interference: 9 from 25 to 66 planet teeth, 8 at 80, 96 and 100', () => {
    for (let planet = 25; planet <= 100; planet++) {
      const free = (outer: Gear) => trochoidMargin(pairSizes(gear(planet), outer)) >= 0;
      const difference = least(free, Math.max(34, planet + 1)) - planet;
      if (planet <= 66) expect(difference, `${planet} teeth`).toBe(9);
      if ([80, 96, 100].includes(planet)) expect(difference, `${planet} teeth`).toBe(8);
    }
  });

  // Derived from the same formulas apart from this project.
  it('radial assembly: 17 from 18 to 44 planet teeth, 16 from 48 to 100', () => {
    for (let planet = 18; planet <= 100; planet++) {
      if (planet > 44 && planet < 48) continue;
      const enters = (outer: Gear) => (trimmingMargin(pairSizes(gear(planet), outer)) ?? -1) >= 0;
      const difference = least(enters, Math.max(34, planet + 1)) - planet;
      expect(difference, `${planet} teeth`).toBe(planet <= 44 ? 17 : 16);
    }
  });

  // Elements of Metric Gear Technology 5.2, table of pinion cutters (tip 1.25 m, x 0): from memory, and every entry
  // recomputed.
  it.each(
    (
      '15:34 16:34 17:35 18:36 19:37 20:38 21:39 22:40 24:42 25:43 27:45 28:46 30:48 31:49 32:50 33:51 34:52 ' +
      '35:53 38:56 40:58 42:60 44:62 48:66 50:68 56:74 60:78 64:82 66:84 80:98 96:114 100:118'
    )
      .split(' ')
      .map((entry) => entry.split(':').map(Number)),
  )('pinion cutter of %d teeth: least ring %d', (cutter, outer) => {
    const rack = { addendum: 1.25, dedendum: 1.25, fillet: 0 };
    const works = (teeth: number) =>
      gearSizes(ring(teeth)).tipRadius >= gearSizes(ring(teeth)).baseRadius &&
      (trimmingMargin(pairSizes(gear(cutter, { rack }), ring(teeth))) ?? -1) >= 0;
    expect(works(outer)).toBe(true);
    expect(works(outer - 1)).toBe(false);
  });
});

// Largest gear that a pinion drives without interference, full-depth teeth. Shigley 13-7, Mott table 8-6, Norton
// table 12-5: from memory, recomputed; the 14.5° row recomputed.
describe('interference of external pairs', () => {
  const meets = (pinion: number, mate: number, pressureAngle: number) => {
    const pair = pairSizes(gear(pinion, { pressureAngle }), gear(mate, { pressureAngle }));
    return pair.tipRadius2 <= largestMateTipRadius(pair);
  };
  it.each([
    [20, '13:16 14:26 15:45 16:101 17:1309'],
    [25, '9:13 10:32 11:249'],
    [14.5, '23:26 24:32 25:40 26:51 27:67 28:92 29:133 30:219 31:496'],
  ])('at %d°: %s', (pressureAngle, row) => {
    for (const entry of row.split(' ')) {
      const [pinion, mate] = entry.split(':').map(Number);
      expect(meets(pinion, mate, pressureAngle), entry).toBe(true);
      expect(meets(pinion, mate + 1, pressureAngle), entry).toBe(false);
    }
  });

  it.each([
    [20, 13, 18],
    [25, 9, 12],
    [14.5, 23, 32],
  ])('at %d°: equal pairs from %d teeth, racks from %d', (pressureAngle, equal, rack) => {
    expect(meets(equal, equal, pressureAngle)).toBe(true);
    expect(meets(equal - 1, equal - 1, pressureAngle)).toBe(false);
    expect(meets(rack, 1e6, pressureAngle)).toBe(true);
    expect(meets(rack - 1, 1e6, pressureAngle)).toBe(false);
  });

  // Shigley, eq. 13-11: from memory, recomputed; a ratio of 4 asks for 15.4, so 16 teeth.
  it.each([
    [2, 14.161],
    [3, 14.981],
    [4, 15.444],
    [5, 15.74],
    [10, 16.383],
  ])('smallest pinion at 20° and ratio %d: %d', (ratio, pinion) => {
    const room = (teeth: number) => {
      const pair = pairSizes(gear(teeth), gear(teeth * ratio));
      return largestMateTipRadius(pair) - pair.tipRadius2;
    };
    expect(room(pinion + 0.0006)).toBeGreaterThan(0);
    expect(room(pinion - 0.0006)).toBeLessThan(0);
  });
});

import { describe, expect, it } from 'vitest';
import { degrees } from '../../lib/tooth/gear.js';
import { idealPin, overPins } from '../../lib/tooth/overPins.js';
import { chordalThickness } from '../../lib/tooth/thickness.js';
import { gear, ring, transverseGear } from '../tooth/gears.js';

const transverse = transverseGear(36, {
  module: 3,
  pressureAngle: 20,
  helixAngle: 33 + 33 / 60 + 26.3 / 3600,
  profileShift: 0.2,
});
const helical = (teeth: number) => gear(teeth, { helixAngle: 15, profileShift: 0.4 });

describe('over and between pins against worked examples', () => {
  // Elements of Metric Gear Technology 10.3.1 to 10.3.3: from memory, recomputed.
  it.each([
    ['external spur, 20 teeth', gear(20), 1.7, 22.2941, 4],
    ['internal spur, 40 teeth', ring(40), 1.7, 37.5951, 4],
    ['helical, normal system, 20 teeth', helical(20), 2, 24.5696, 4],
    ['helical, transverse system, 36 teeth', transverse, 4.5, 115.892, 3],
  ] as const)('%s', (_, measured, pin, size, places) => {
    expect(overPins(measured, pin)).toBeCloseTo(size, places);
  });

  // Worked out from the handbook formulas apart from this project; no printed example claimed.
  it.each([
    ['external spur odd', gear(21), 1.7, 23.2359],
    ['1.728 pins, 20 teeth', gear(20), 1.728, 22.39],
    ['1.728 pins, 21 teeth', gear(21), 1.728, 23.3321],
    ['shifted', gear(24, { module: 3, profileShift: 0.4 }), 5.5, 82.1072],
    ['shifted odd', gear(17, { module: 2, profileShift: 0.2 }), 3.5, 39.3667],
    ['helical odd, balls in one plane', helical(21), 2, 25.5515],
    ['internal odd', ring(41), 1.7, 38.5671],
    ['internal, 1.68 pins, 60 teeth', ring(60), 1.68, 57.6985],
    ['internal, 1.68 pins, 61 teeth', ring(61), 1.68, 58.6789],
    ['internal shifted', ring(32, { module: 2, profileShift: 0.2 }), 3.5, 59.6538],
  ] as const)('%s', (_, measured, pin, size) => {
    expect(Math.abs(overPins(measured, pin) - size)).toBeLessThan(0.00006);
  });
});

describe('ideal pins', () => {
  // Elements of Metric Gear Technology, tables 10-14 and 10-17 for module 1 at 20°: recomputed; 1.7886, 1.7245
  // and 1.8149 also remembered from the print.
  const shifts = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const external: [number, number[]][] = [
    [10, [1.7886, 1.9979, 2.2687, 2.6079, 3.0248, 3.5315]],
    [20, [1.7244, 1.8149, 1.9306, 2.0718, 2.2389, 2.4329]],
    [30, [1.7057, 1.7632, 1.8369, 1.9267, 2.0324, 2.1542]],
    [40, [1.6967, 1.7389, 1.793, 1.8589, 1.9365, 2.0257]],
    [60, [1.6881, 1.7155, 1.7509, 1.794, 1.8448, 1.9032]],
  ];
  const internal: [number, number[]][] = [
    [20, [1.6284, 1.6759, 1.7047, 1.7154]],
    [30, [1.6418, 1.6751, 1.6949, 1.7016]],
    [40, [1.6489, 1.6745, 1.6895, 1.6944]],
    [60, [1.6562, 1.6737, 1.6839, 1.687]],
  ];
  it.each(external)('external, %d teeth', (teeth, row) => {
    for (const [i, pin] of row.entries())
      expect(Math.abs(idealPin(gear(teeth, { profileShift: shifts[i] })) - pin)).toBeLessThan(0.00006);
  });
  it.each(internal)('internal, %d teeth', (teeth, row) => {
    for (const [i, pin] of row.entries())
      expect(Math.abs(idealPin(ring(teeth, { profileShift: shifts[i] })) - pin)).toBeLessThan(0.00006);
  });

  // The same handbook's helical examples: from memory, recomputed.
  it('helical, both systems', () => {
    expect(idealPin(helical(20))).toBeCloseTo(1.902, 4);
    // Printed 4.2190 from angles rounded to five places, which leaves it 0.0001 of room.
    expect(Math.abs(idealPin(transverse) - 4.219)).toBeLessThan(0.0001);
  });
});

describe('chordal thickness', () => {
  // Elements of Metric Gear Technology, tables 10-1, 10-3 and 10-4, read on the page (the last two figures of
  // 10-4 recomputed): gear, tip height, arc, chord, chordal addendum.
  const fourth = transverseGear(20, { module: 4, pressureAngle: 20, helixAngle: 22.5, profileShift: 0.3 });
  it.each([
    ['10-1', gear(12, { module: 10, profileShift: 0.3 }), 13, 17.8918, 17.8256, 13.6657],
    ['10-3', gear(16, { module: 5, helixAngle: 25, profileShift: 0.2 }), 6, 8.5819, 8.5728, 6.1712],
    ['10-4', fourth, 4.7184, 6.6119, 6.6065, 4.835],
  ] as const)('table %s', (_, measured, tipHeight, arc, chord, addendum) => {
    const found = chordalThickness(measured, tipHeight);
    expect(found.thickness).toBeCloseTo(arc, 4);
    expect(found.chord).toBeCloseTo(chord, 4);
    expect(found.addendum).toBeCloseTo(addendum, 4);
  });

  it('table 10-2: a rack is the gear of endlessly many teeth', () => {
    const nearlyRack = chordalThickness(gear(1e7, { module: 3 }), 3);
    expect(nearlyRack.chord).toBeCloseTo(4.7124, 4);
    expect(nearlyRack.addendum).toBeCloseTo(3, 4);
  });

  // The same tables print equivalent tooth counts and half angles in degrees.
  it.each([
    ['10-1', gear(12, { module: 10, profileShift: 0.3 }), 12, 8.5427],
    ['10-3', gear(16, { module: 5, helixAngle: 25, profileShift: 0.2 }), 21.4928, 4.57556],
    ['10-4', fourth, 25.362, 4.04196],
  ] as const)('half angle of table %s', (_, measured, teeth, angle) => {
    const { thickness, chord } = chordalThickness(measured);
    expect(degrees(thickness / (teeth * measured.module))).toBeCloseTo(angle, 4);
    expect(degrees(Math.asin(chord / (teeth * measured.module)))).toBeCloseTo(angle, 4);
  });
});

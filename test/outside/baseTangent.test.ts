import { describe, expect, it } from 'vitest';
import { baseTangentFaceWidth, baseTangentLength, teethSpanned } from '../../lib/tooth/baseTangent.js';
import { degrees, gearSizes } from '../../lib/tooth/gear.js';
import { gear, transverseGear } from '../tooth/gears.js';

// Base tangent tables for module 1 at 20° (Machinery's Handbook, JIS handbooks): teeth, teeth spanned, length.
// From memory, recomputed.
const table: [number, number, number][] = [
  [9, 2, 4.5542],
  [10, 2, 4.5683],
  [11, 2, 4.5823],
  [12, 2, 4.5963],
  [13, 2, 4.6103],
  [14, 2, 4.6243],
  [15, 2, 4.6383],
  [16, 2, 4.6523],
  [17, 2, 4.6663],
  [18, 3, 7.6324],
  [19, 3, 7.6464],
  [20, 3, 7.6604],
  [21, 3, 7.6744],
  [22, 3, 7.6885],
  [23, 3, 7.7025],
  [24, 3, 7.7165],
  [25, 3, 7.7305],
  [26, 3, 7.7445],
  [27, 4, 10.7106],
  [28, 4, 10.7246],
  [30, 4, 10.7526],
  [32, 4, 10.7806],
  [34, 4, 10.8086],
  [35, 4, 10.8227],
  [36, 5, 13.7888],
  [38, 5, 13.8168],
  [40, 5, 13.8448],
  [42, 5, 13.8728],
  [44, 5, 13.9008],
  [45, 6, 16.867],
  [48, 6, 16.909],
  [50, 6, 16.937],
  [54, 7, 19.9452],
  [55, 7, 19.9592],
  [56, 7, 19.9732],
  [60, 7, 20.0292],
];

describe('base tangent length against the printed table', () => {
  it.each(table)('%d teeth: over %d teeth %d mm', (teeth, spanned, length) => {
    expect(teethSpanned(gear(teeth))).toBe(spanned);
    expect(Math.abs(baseTangentLength(gear(teeth), spanned) - length)).toBeLessThan(0.00005001);
  });
});

// Elements of Metric Gear Technology 10.2.1 and 10.2.2, worked examples: from memory, recomputed.
describe('base tangent length against worked examples', () => {
  it('spur, shifted: m 3, z 24, x 0.4', () => {
    const shifted = gear(24, { module: 3, profileShift: 0.4 });
    expect(teethSpanned(shifted)).toBe(4);
    expect(baseTangentLength(shifted, 4)).toBeCloseTo(32.8266, 4);
  });

  it('helical, normal system: m_n 3, z 24, β 25°, x_n 0.4', () => {
    const helical = gear(24, { module: 3, helixAngle: 25, profileShift: 0.4 });
    expect(degrees(gearSizes(helical).transversePressureAngle)).toBeCloseTo(21.88023, 5);
    expect(teethSpanned(helical)).toBe(5);
    expect(baseTangentLength(helical, 5)).toBeCloseTo(42.0085, 4);
    expect(baseTangentFaceWidth(helical, 5)).toBeCloseTo(16.683, 3);
  });

  it('helical, transverse system: m_t 3, α_t 20°, z 24, β 22.5°, x_t 0.4', () => {
    const helical = transverseGear(24, { module: 3, pressureAngle: 20, helixAngle: 22.5, profileShift: 0.4 });
    expect(helical.pressureAngle).toBeCloseTo(18.58597, 5);
    expect(teethSpanned(helical)).toBe(4);
    expect(baseTangentLength(helical, 4)).toBeCloseTo(30.591, 4);
  });
});

import { describe, expect, it } from 'vitest';
import { degrees, radians } from '../../lib/tooth/gear.js';
import { inverseInvolute, involute } from '../../lib/tooth/involute.js';

// Machinery's Handbook, table of involute functions: from memory, recomputed.
const handbook: [number, number][] = [
  [14.5, 0.005544843],
  [17.5, 0.00986617],
  [20, 0.014904384],
  [22.5, 0.021514481],
  [25, 0.029975345],
  [30, 0.053751494],
];
// inv α = tan α − α worked out apart from this project; no page claimed.
const recomputed: [number, number][] = [
  [10, 0.001794056],
  [12, 0.003117051],
  [15, 0.006149805],
  [16, 0.007492705],
  [18, 0.010760431],
  [21, 0.017344892],
  [22, 0.02005379],
  [23, 0.023049088],
  [24, 0.026349665],
  [26, 0.033946983],
  [27, 0.038286551],
  [28, 0.043017241],
  [35, 0.0893423],
  [40, 0.14096793],
  [45, 0.214601837],
];

describe('involute function against the printed tables', () => {
  it.each([...handbook, ...recomputed])('inv %d°', (angle, value) => {
    expect(Math.abs(involute(radians(angle)) - value)).toBeLessThan(5.1e-10);
  });

  it.each([...handbook, ...recomputed])('and back to %d°', (angle, value) => {
    // The table's last digit leaves the angle this much room: d(inv α) = tan² α dα.
    const room = 5.1e-10 / Math.tan(radians(angle)) ** 2;
    expect(Math.abs(inverseInvolute(value) - radians(angle))).toBeLessThan(room);
  });

  it('finds 20° to nine places from twelve digits', () => {
    expect(degrees(inverseInvolute(0.014904383867))).toBeCloseTo(20, 8);
  });
});

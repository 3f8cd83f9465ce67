import { describe, expect, it } from 'vitest';
import { gearSizes, radians } from '../../lib/tooth/gear.js';
import { toothProfile } from '../../lib/tooth/profile.js';
import { largestFillet, standardRacks } from '../../lib/tooth/racks.js';
import { transverseThickness } from '../../lib/tooth/thickness.js';
import { straightDepth } from '../../lib/tooth/undercut.js';
import { modulesBetween } from '../../lib/train/moduleSeries.js';
import { gear } from '../tooth/gears.js';

const alpha = radians(20);

// ISO 53:1998 table 1 and table A.1: figures from memory.
describe('proportions of the standard basic racks, in modules', () => {
  it.each([
    ['A', 0.25, 0.38],
    ['B', 0.25, 0.3],
    ['C', 0.25, 0.25],
    ['D', 0.4, 0.39],
  ] as const)('profile %s: working depth 2, clearance %d, fillet %d', (name, clearance, fillet) => {
    const rack = standardRacks[name];
    const { tipRadius, rootRadius, referenceRadius } = gearSizes(gear(40, { rack }));
    expect(tipRadius - referenceRadius).toBeCloseTo(1, 12);
    expect(referenceRadius - rootRadius).toBeCloseTo(1 + clearance, 12);
    expect(rack.fillet).toBe(fillet);
    // Tooth and space share the pitch line: π m / 2 each.
    expect(transverseThickness(gear(40, { rack }), referenceRadius)).toBeCloseTo(Math.PI / 2, 12);
  });

  // A rack is the gear of endlessly many teeth: its generated profile shows the fillet and the straight depth.
  it.each(['A', 'B', 'C', 'D'] as const)('profile %s on a very large gear', (name) => {
    const nearlyRack = gear(1e6, { rack: standardRacks[name] });
    const { referenceRadius } = gearSizes(nearlyRack);
    const { formRadius } = toothProfile(nearlyRack);
    // Profile D's rack tip is all but fully round; the generated root keeps a narrow flat there.
    const room = name === 'D' ? 0.01 : 0.0001;
    expect(Math.abs(referenceRadius - formRadius - straightDepth(nearlyRack))).toBeLessThan(room);
  });
});

// ISO 53:1998 clause 5, largest fillet radius: formulas from memory. Here the circle itself is looked for.
describe('largest fillet against a drawn circle', () => {
  /** Radius of the circle on the middle line of the rack space that touches the tip line and both flanks. */
  function roundTip(dedendum: number): number {
    let [low, high] = [0, 1];
    for (let step = 0; step < 60; step++) {
      const radius = (low + high) / 2;
      // Distance of the centre (0, −(dedendum − radius)) from the flank through (π/4, 0).
      const toFlank = (Math.PI / 4 - (dedendum - radius) * Math.tan(alpha)) * Math.cos(alpha);
      if (radius < toFlank) low = radius;
      else high = radius;
    }
    return low;
  }

  it('profile D: a full round tip, printed 0.39', () => {
    expect(roundTip(1.4)).toBeCloseTo(0.3939, 4);
    expect(largestFillet({ ...standardRacks.D, fillet: 0 }, alpha)).toBeCloseTo(roundTip(1.4), 12);
  });

  it('profile A: the fillet ends where the mate’s straight flank does, printed 0.38', () => {
    const exact = 0.25 / (1 - Math.sin(alpha));
    expect(exact).toBeCloseTo(0.38, 3);
    // The point of tangency lies (1 − sin α) radii above the tip line: exactly the clearance.
    expect(straightDepth(gear(40, { rack: { ...standardRacks.A, fillet: exact } }))).toBeCloseTo(1, 12);
    expect(Math.abs(largestFillet({ ...standardRacks.A, fillet: 0 }, alpha) - exact)).toBeLessThan(0.005);
  });

  it('both limits meet at a clearance of 0.295 m', () => {
    const byClearance = (clearance: number) => clearance / (1 - Math.sin(alpha));
    expect(byClearance(0.2949)).toBeLessThan(roundTip(1.2949));
    expect(byClearance(0.2953)).toBeGreaterThan(roundTip(1.2953));
  });
});

// ISO 54:1996 table 1, series I and II from 1 to 10, without 6.5: from memory.
describe('standard modules', () => {
  const first = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
  const second = [1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 7, 9];
  it('are both series together', () => {
    expect(modulesBetween(1, 10)).toEqual([...first, ...second].sort((a, b) => a - b));
    expect(modulesBetween(1.3, 1.6)).toEqual([1.375, 1.5]);
    expect(modulesBetween(1.52, 1.6)).toEqual([]);
  });
});

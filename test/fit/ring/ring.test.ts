import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadRing } from '../../../lib/fit/ring/equalLoads.js';
import { ringSection } from '../../../lib/fit/ring/section.js';
import { wallStress } from '../../../lib/fit/ring/stress.js';
import { squeezedRing } from '../../../lib/fit/ring/twoLoads.js';
import { Refusal } from '../../../lib/refusal.js';
import { evenly } from '../../evenly.js';

const size = { meanRadius: 40, depth: 5, width: 20, modulus: 2000 };
const anyRing = fc
  .record({
    meanRadius: evenly(5, 200),
    share: evenly(0.01, 0.6),
    width: evenly(1, 50),
    modulus: evenly(500, 5000),
  })
  .map(({ share, ...rest }) => ({ ...rest, depth: share * rest.meanRadius }));

describe('ring section', () => {
  it.each([
    ['meanRadius', 0],
    ['depth', -1],
    ['width', Number.NaN],
    ['modulus', Number.POSITIVE_INFINITY],
    ['poisson', 0.6],
    ['depth', 80],
  ])('refuses %s %d by name', (parameter, value) => {
    const wrong = () => ringSection({ ...size, [parameter]: value });
    expect(wrong).toThrow(Refusal);
    expect(wrong).toThrow(parameter);
  });

  it('refuses a single force', () => {
    expect(() => spreadRing(ringSection(size), 1, 1)).toThrow(Refusal);
  });
});

describe('rings under forces', () => {
  it('two outward forces are a squeeze turned by a quarter', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const section = ringSection(ring);
        const squeeze = squeezedRing(section, 10);
        const spread = spreadRing(section, 2, 10);
        expect(2 * spread.outwardUnderLoad).toBeCloseTo(squeeze.loadedDiameter, 9);
        expect(2 * spread.inwardMidway).toBeCloseTo(squeeze.otherDiameter, 9);
        expect(spread.momentUnderLoad).toBeCloseTo(squeeze.momentUnderLoad, 6);
        expect(spread.momentMidway).toBeCloseTo(squeeze.momentMidway, 6);
        expect(spread.stress).toBeCloseTo(squeeze.stress, 6);
      }),
    );
  });

  it('a thicker, wider or stiffer wall never moves more', () => {
    fc.assert(
      fc.property(anyRing, fc.constantFrom('depth', 'width', 'modulus'), (ring, key) => {
        const before = squeezedRing(ringSection(ring), 10);
        const after = squeezedRing(ringSection({ ...ring, [key]: ring[key] * 1.1 }), 10);
        expect(after.loadedDiameter).toBeLessThan(before.loadedDiameter);
        expect(after.otherDiameter).toBeLessThan(before.otherDiameter);
      }),
    );
  });

  it('stress is the larger of the two faces, whichever way the moment turns', () => {
    const section = ringSection(size);
    const thin = (6 * 1000) / (20 * 25);
    // The inside of a curved wall bears more than 6 M/(b h²), the outside less.
    expect(wallStress(section, 1000, 0)).toBeGreaterThan(thin);
    expect(wallStress(section, -1000, 0)).toBe(wallStress(section, 1000, 0));
    expect(wallStress(section, 0, 500)).toBeCloseTo(5, 12);
    expect(wallStress(section, 1000, 500)).toBeCloseTo(wallStress(section, 1000, 0) + 5, 9);
  });
});

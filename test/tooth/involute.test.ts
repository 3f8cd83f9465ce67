import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inverseInvolute, involute } from '../../lib/tooth/involute.js';
import { evenly } from '../evenly.js';

describe('inverse involute', () => {
  it('gives back any angle short of a quarter turn, both signs', () => {
    fc.assert(
      fc.property(evenly(-1.57, 1.57), (angle) => {
        // tan α − α loses digits to cancellation; near 0 the angle is only known to ε/α.
        const room = 4e-16 + 4e-16 / Math.max(Math.abs(angle), 1e-6);
        if (Math.abs(angle) < 1e-6) return;
        expect(Math.abs(inverseInvolute(involute(angle)) - angle)).toBeLessThan(room);
      }),
      { numRuns: 2000 },
    );
  });

  it('solves for values far beyond any gear, and is odd', () => {
    for (const value of [1e-12, 1e-6, 0.3, 1.4, 1.5, 1.6, 10, 1e4]) {
      const angle = inverseInvolute(value);
      // One ulp of the angle moves the value by tan² α ulps.
      const room = value * 1e-15 + 1e-15 * (1 + Math.tan(angle) ** 2);
      expect(Math.abs(involute(angle) - value)).toBeLessThan(room);
      expect(inverseInvolute(-value)).toBe(-angle);
    }
    expect(inverseInvolute(0)).toBe(0);
  });
});

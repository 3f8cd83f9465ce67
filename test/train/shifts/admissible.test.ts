import fc from 'fast-check';
import { expect, it } from 'vitest';
import { admissible } from '../../../lib/train/shifts/admissible.js';
import { ROOMS } from '../../../lib/train/shifts/limits.js';
import { shiftWishes } from '../../../lib/train/shifts/specShifts.js';
import { evenly } from '../../evenly.js';
import { setOf } from '../../sets.js';

const MARGIN = 1e-3;
const WIDTH = 1e-4;

/** Rooms that fall off to both sides of a peak, as limits do along a split: h − c |x − p| − d (x − p)². */
const peak = fc.record({
  h: evenly(-0.4, 1.2),
  p: evenly(-1.5, 1.5),
  c: evenly(0.2, 2),
  d: evenly(0, 1),
});

// Against a walk over the whole range in small steps.
it('finds the nearest value that keeps every limit, or says that there is none', () => {
  let [found, none] = [0, 0];
  fc.assert(
    fc.property(fc.array(peak, { minLength: 1, maxLength: 4 }), evenly(-1, 1), (peaks, ideal) => {
      const rooms = (x: number) => {
        // Beyond the ends a circle may be out of reach.
        if (!(Math.abs(x) <= 1)) throw new RangeError(`asked at ${x}`);
        return peaks.map(({ h, p, c, d }) => h - c * Math.abs(x - p) - d * (x - p) * (x - p));
      };
      const least = (x: number) => Math.min(...rooms(x));
      const result = admissible(rooms, ideal, [-1, 1], MARGIN, WIDTH);
      // Undefined is for rooms without a slope: these have one but just at their peak.
      if (result === undefined) return;
      const grid = Array.from({ length: 20_001 }, (_, i) => -1 + i / 10_000);
      const allowed = grid.filter((x) => least(x) >= MARGIN).map((x) => Math.abs(x - ideal));
      if ('limit' in result) {
        none++;
        // Peaks are kinks, over which a tangent may step by a hair's breadth.
        expect(allowed.length).toBeLessThan(4);
        expect(ROOMS).toContain(result.limit);
        expect(result.room).toBeLessThan(MARGIN);
        return;
      }
      found++;
      expect(least(result.x)).toBeGreaterThanOrEqual(0.98 * MARGIN);
      expect(Math.abs(result.x)).toBeLessThanOrEqual(1);
      const nearest = allowed.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
      expect(Math.abs(result.x - ideal)).toBeLessThan(nearest + 2 * MARGIN);
    }),
    { numRuns: 300 },
  );
  expect(found).toBeGreaterThan(50);
  expect(none).toBeGreaterThan(50);
});

it('asks for tips and walls in modules, as the file asks for them in millimetres', () => {
  const spec = setOf(15, 15, 45, 5, {
    module: 2,
    limits: { toothFeature: 0.9, wall: 1.2, contactRatio: 1.3 },
  });
  expect(shiftWishes(spec)).toMatchObject({
    tipThickness: expect.closeTo(0.45, 12),
    toothThickness: expect.closeTo(0.6, 12),
    contactRatio: 1.3,
  });
});

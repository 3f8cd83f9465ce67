import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allowsEqualSpacing,
  assemblyStep,
  neighbourClearance,
  planetPlaces,
} from '../../lib/train/assembly.js';

const counts = fc.record({
  sun: fc.integer({ min: 5, max: 100 }),
  ring: fc.integer({ min: 15, max: 300 }),
  count: fc.integer({ min: 1, max: 12 }),
});

describe('places of planets', () => {
  it('are multiples of the step, in order, each as near to its equal place as any multiple is', () => {
    fc.assert(
      fc.property(counts, ({ sun, ring, count }) => {
        const step = assemblyStep(sun, ring);
        const places = planetPlaces(sun, ring, count);
        expect(places).toHaveLength(count);
        for (const [i, place] of places.entries()) {
          expect(Math.abs(place / step - Math.round(place / step))).toBeLessThan(1e-9);
          expect(Math.abs(place - (360 * i) / count)).toBeLessThanOrEqual(step / 2 + 1e-9);
        }
        expect([...places].sort((a, b) => a - b)).toEqual(places);
      }),
    );
  });

  it('are equal exactly where the teeth allow it', () => {
    fc.assert(
      fc.property(counts, ({ sun, ring, count }) => {
        const off = planetPlaces(sun, ring, count).map((place, i) => Math.abs(place - (360 * i) / count));
        expect(Math.max(...off) < 1e-9).toBe(allowsEqualSpacing(sun, ring, count));
      }),
    );
    expect(planetPlaces(15, 45, 5)).toEqual([0, 72, 144, 216, 288]);
  });
});

describe('neighbour clearance', () => {
  it('is what lies between two tip circles', () => {
    for (let count = 2; count <= 12; count++) {
      const angle = (2 * Math.PI) / count;
      const apart = Math.hypot(22.5 * Math.cos(angle) - 22.5, 22.5 * Math.sin(angle));
      expect(neighbourClearance(22.5, count, 12.75)).toBeCloseTo(apart - 25.5, 12);
    }
    expect(neighbourClearance(22.5, 1, 12.75)).toBe(Number.POSITIVE_INFINITY);
  });
});

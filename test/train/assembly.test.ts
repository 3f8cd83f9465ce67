import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allowsEqualSpacing,
  assemblyStep,
  departure,
  leastAngle,
  leastClearance,
  neighbourClearance,
  planetPlaces,
  unbalance,
} from '../../lib/train/assembly.js';
import { evenly } from '../evenly.js';

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

describe('planets at nearest places', () => {
  // Handbook condition, every angle between planets a multiple of 360°/(20 + 80) = 3.6°: from memory.
  it('20/30/80 with three stand at 0, 118.8 and 241.2', () => {
    const places = planetPlaces(20, 80, 3);
    for (const [i, place] of [0, 118.8, 241.2].entries()) expect(places[i]).toBeCloseTo(place, 10);
    expect(departure(places)).toBeCloseTo(1.2, 10);
    expect(leastAngle(places)).toBeCloseTo(118.8, 10);
  });

  it('keep their distance pair by pair', () => {
    fc.assert(
      fc.property(counts, evenly(10, 50), ({ sun, ring, count }, a) => {
        const places = planetPlaces(sun, ring, count);
        const points = places.map((place) => [
          a * Math.cos((place * Math.PI) / 180),
          a * Math.sin((place * Math.PI) / 180),
        ]);
        const apart = points.flatMap(([x, y], i) =>
          points.slice(i + 1).map(([u, v]) => Math.hypot(x - u, y - v) - 2 * 3),
        );
        expect(leastClearance(places, a, 3)).toBeCloseTo(Math.min(...apart, Number.POSITIVE_INFINITY), 9);
      }),
    );
  });

  it('are out of balance by where their common centre of mass lies', () => {
    expect(unbalance([0, 90, 180, 270])).toBe(0);
    expect(unbalance([0, 72, 144, 216, 288])).toBe(0);
    expect(unbalance([0])).toBe(1);
    expect(unbalance([0, 90])).toBeCloseTo(Math.SQRT1_2, 12);
    // Two unit vectors 2.4° closer together than 120° each side: (1 + 2 cos 118.8°)/3.
    expect(unbalance([0, 118.8, 241.2])).toBeCloseTo((1 + 2 * Math.cos((118.8 * Math.PI) / 180)) / 3, 12);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { radians } from '../../lib/tooth/gear.js';
import { planetPlaces } from '../../lib/train/assembly.js';
import { phases } from '../../lib/train/phases.js';
import { evenly } from '../evenly.js';

/** Place of a direction in the pitch of a gear with a tooth at `rotation`: whole numbers are tooth centres. */
const phase = (teeth: number, rotation: number, direction: number) =>
  (teeth * (direction - rotation)) / (2 * Math.PI);

const fromWhole = (value: number) => Math.abs(value - Math.round(value));

const sets = fc.record({
  sunTeeth: fc.integer({ min: 6, max: 60 }),
  planetTeeth: fc.integer({ min: 6, max: 60 }),
  extra: fc.integer({ min: -2, max: 2 }),
  count: fc.integer({ min: 1, max: 9 }),
  sunRotation: evenly(-10, 10),
});

describe('phases', () => {
  // A tooth of one gear stands in a space of the other wherever they meet: the mesh condition itself.
  it('put a tooth in a space at every mesh of every planet, shifted rings included', () => {
    fc.assert(
      fc.property(sets, ({ sunTeeth, planetTeeth, extra, count, sunRotation }) => {
        const teeth = { sunTeeth, planetTeeth, ringTeeth: sunTeeth + 2 * planetTeeth + extra };
        const places = planetPlaces(sunTeeth, teeth.ringTeeth, count);
        const found = phases(teeth, places, sunRotation);
        for (const [i, place] of places.entries()) {
          const direction = radians(place);
          const planet = found.planets[i];
          const inner =
            phase(sunTeeth, sunRotation, direction) + phase(planetTeeth, planet, direction + Math.PI);
          expect(fromWhole(inner - 0.5)).toBeLessThan(1e-9);
          const outer =
            phase(planetTeeth, planet, direction) - phase(teeth.ringTeeth, found.ringSpace, direction);
          expect(fromWhole(outer)).toBeLessThan(1e-9);
        }
        const halfPitch = phase(teeth.ringTeeth, found.ringTooth, found.ringSpace);
        expect(fromWhole(halfPitch - 0.5)).toBeLessThan(1e-9);
      }),
    );
  });

  it('turns stay within a pitch, and equal ones are equal', () => {
    const teeth = { sunTeeth: 15, planetTeeth: 15, ringTeeth: 45 };
    const found = phases(teeth, planetPlaces(15, 45, 5));
    const pitch = (2 * Math.PI) / 15;
    for (const turn of found.planets) {
      expect(turn).toBeGreaterThanOrEqual(0);
      expect(turn).toBeLessThan(pitch);
    }
    expect(found.ringTooth).toBeCloseTo(Math.PI / 45, 12);
    expect(found.ringSpace).toBeCloseTo(0, 12);
  });

  it('refuses places that do not assemble, naming the nearest that does', () => {
    const teeth = { sunTeeth: 20, planetTeeth: 30, ringTeeth: 80 };
    try {
      phases(teeth, [0, 120, 240]);
      expect.unreachable();
    } catch (error) {
      const refusal = error as Refusal;
      expect(refusal).toBeInstanceOf(Refusal);
      expect(refusal.value).toBe(120);
      expect(refusal.nearest[0]).toBeCloseTo(118.8, 10);
    }
    expect(() => phases(teeth, [0, 118.8, 241.2])).not.toThrow();
  });
});

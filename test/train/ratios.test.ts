import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/spec/refusal.js';
import { ratios, speeds } from '../../lib/train/ratios.js';
import { evenly } from '../evenly.js';

const teeth = { sunTeeth: 15, planetTeeth: 15, ringTeeth: 45 };

describe('speeds', () => {
  it('roll without slip: seen from the carrier, pitch circles pass each other at one speed', () => {
    const speed = evenly(-100, 100);
    fc.assert(
      fc.property(speed, speed, fc.constantFrom('sun', 'carrier', 'ring'), (one, other, unknown) => {
        const known = { sun: one, carrier: other, ring: one, [unknown]: undefined };
        const found = speeds(teeth, known);
        const fromCarrier = (n: number) => n - found.carrier;
        expect(15 * fromCarrier(found.sun)).toBeCloseTo(-15 * fromCarrier(found.planet), 8);
        expect(45 * fromCarrier(found.ring)).toBeCloseTo(15 * fromCarrier(found.planet), 8);
        for (const member of ['sun', 'carrier', 'ring'] as const)
          if (member !== unknown) expect(found[member]).toBe(known[member]);
      }),
    );
  });

  it('give the ratios with one member held', () => {
    const { ringHeld, carrierHeld, sunHeld } = ratios(15, 45);
    expect(1 / speeds(teeth, { sun: 1, ring: 0 }).carrier).toBeCloseTo(ringHeld, 12);
    expect(1 / speeds(teeth, { sun: 1, carrier: 0 }).ring).toBeCloseTo(carrierHeld, 12);
    expect(1 / speeds(teeth, { ring: 1, sun: 0 }).carrier).toBeCloseTo(sunHeld, 12);
  });

  it('refuse one speed, three, and none that is a number', () => {
    expect(() => speeds(teeth, { sun: 1 })).toThrow(Refusal);
    expect(() => speeds(teeth, { sun: 1, carrier: 1, ring: 1 })).toThrow(/exactly two/);
    expect(() => speeds(teeth, { sun: 1, carrier: Number.NaN })).toThrow(Refusal);
  });
});

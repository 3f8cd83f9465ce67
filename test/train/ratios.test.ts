import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { ratios } from '../../lib/train/ratios.js';
import { type Link, speeds } from '../../lib/train/speeds.js';
import { evenly } from '../evenly.js';
import { planetaryLinks } from '../planetarySets.js';

const links = planetaryLinks(15, 15, 45);

describe('speeds', () => {
  it('roll without slip: seen from the carrier, pitch circles pass each other at one speed', () => {
    const speed = evenly(-100, 100);
    fc.assert(
      fc.property(speed, speed, fc.constantFrom('sun', 'carrier', 'ring'), (one, other, unknown) => {
        const all = { sun: one, carrier: other, ring: one };
        const known = Object.fromEntries(Object.entries(all).filter(([name]) => name !== unknown));
        const found = speeds(links, known);
        const fromCarrier = (n: number) => n - found.carrier;
        expect(15 * fromCarrier(found.sun)).toBeCloseTo(-15 * fromCarrier(found.planet), 8);
        expect(45 * fromCarrier(found.ring)).toBeCloseTo(15 * fromCarrier(found.planet), 8);
        for (const member of ['sun', 'carrier', 'ring'] as const)
          if (member !== unknown) expect(found[member]).toBeCloseTo(known[member], 9);
      }),
    );
  });

  it('give the ratios with one member held', () => {
    const { ringHeld, carrierHeld, sunHeld } = ratios(15, 45);
    expect(1 / speeds(links, { sun: 1, ring: 0 }).carrier).toBeCloseTo(ringHeld, 12);
    expect(1 / speeds(links, { sun: 1, carrier: 0 }).ring).toBeCloseTo(carrierHeld, 12);
    expect(1 / speeds(links, { ring: 1, sun: 0 }).carrier).toBeCloseTo(sunHeld, 12);
  });

  it('refuse one speed, three, and none that is a number', () => {
    expect(() => speeds(links, { sun: 1 })).toThrow(Refusal);
    expect(() => speeds(links, { sun: 1, carrier: 1, ring: 1 })).toThrow(
      /as many members as leave one answer/,
    );
    expect(() => speeds(links, { sun: 1, carrier: Number.NaN })).toThrow(Refusal);
  });

  it('two rings and planets with two toothings: Willis gives 1 + z_r/z_s over 1 − z_r z_p2 / (z_p z_o)', () => {
    // Sun 12, planets 15 and 12, held ring 42, driven ring 39: (1 + 42/12) / (1 − 42 · 12 / (15 · 39)).
    const stepped: Link[] = [
      ...planetaryLinks(12, 15, 42),
      { between: ['planet', 'output'], teeth: [12, 39], internal: true, about: 'carrier' },
    ];
    const { output } = speeds(stepped, { sun: 1, ring: 0 });
    expect(1 / output).toBeCloseTo((1 + 42 / 12) / (1 - (42 * 12) / (15 * 39)), 9);
  });

  it('a pair and a gear by itself need one', () => {
    const pair: Link[] = [{ between: ['pinion', 'wheel'], teeth: [12, 36], internal: false }];
    expect(speeds(pair, { pinion: 3 }).wheel).toBeCloseTo(-1, 12);
    expect(speeds([], { gear: 2 })).toEqual({ gear: 2 });
  });
});

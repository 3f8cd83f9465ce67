import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestSets, type SetCounts } from '../../lib/train/nearestSets.js';
import type { Judged } from '../../lib/train/nearMiss.js';
import { completeWanted } from '../../lib/train/planWanted.js';
import { searchSets } from '../../lib/train/searchSets.js';

const counts = (sunTeeth: number, planetTeeth: number, ringTeeth: number, planets: number): SetCounts => ({
  sunTeeth,
  planetTeeth,
  ringTeeth,
  planets,
});

describe('nearest sets', () => {
  it('15/14/45 with five planets: one tooth more on planets, or one from sun to ring', () => {
    const found = nearestSets(counts(15, 14, 45, 5));
    expect(found).toHaveLength(5);
    expect(found.slice(0, 2)).toEqual([counts(15, 15, 45, 5), counts(16, 14, 44, 5)]);
  });

  it('a set that works comes first itself', () => {
    expect(nearestSets(counts(15, 15, 45, 5), 1)).toEqual([counts(15, 15, 45, 5)]);
  });

  it('another number of planets only after every set with the one asked for', () => {
    const found = nearestSets(counts(20, 30, 80, 4), 400).map(({ planets }) => Math.abs(planets - 4));
    expect(found).toEqual([...found].sort((a, b) => a - b));
    expect(found.at(-1)).toBeGreaterThan(0);
  });

  it('are sets that the search finds too, nearest first', () => {
    const asked = fc.tuple(
      fc.integer({ min: 8, max: 40 }),
      fc.integer({ min: 8, max: 30 }),
      fc.integer({ min: -3, max: 3 }),
      fc.integer({ min: 3, max: 8 }),
    );
    fc.assert(
      fc.property(asked, ([sun, planet, extra, count]) => {
        const wanted = counts(sun, planet, sun + 2 * planet + extra, count);
        const found = nearestSets(wanted);
        const change = (set: SetCounts) =>
          Math.abs(set.sunTeeth - sun) / sun +
          Math.abs(set.planetTeeth - planet) / planet +
          Math.abs(set.ringTeeth - wanted.ringTeeth) / wanted.ringTeeth;
        for (const [i, set] of found.entries()) {
          const wish = {
            sunTeeth: set.sunTeeth,
            planetTeeth: set.planetTeeth,
            planets: set.planets,
            helixAngle: 0,
            gap: 0,
            ringTeeth: { least: 10, most: 300 },
            bed: 2000,
          };
          const rows: Judged[] = [];
          searchSets(completeWanted(wish, [1]), (row) => row.miss ?? rows.push(row));
          expect(rows).toHaveLength(1);
          const before = found[i - 1];
          if (before?.planets === set.planets)
            expect(change(before)).toBeLessThanOrEqual(change(set) + 1e-12);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('heeds the room asked for between planets', () => {
    // 10/10/30 × 5 leaves 0.04 module between planets at a helix of 30°.
    const asked = counts(10, 10, 30, 5);
    expect(nearestSets(asked, 1, { helixAngle: 30 })).toEqual([asked]);
    expect(nearestSets(asked, 1, { helixAngle: 30, clearance: 0.1 })).not.toEqual([asked]);
  });

  it('is empty where nothing near works', () => {
    expect(nearestSets(counts(15, 15, 45, 5), 5, { clearance: 100 })).toEqual([]);
  });
});

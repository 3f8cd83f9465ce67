import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingerGaps as check, traps } from '../../../lib/proof/checks/fingerGaps.js';
import { fingerGaps, spaceRadius } from '../../../lib/proof/safety/fingerGaps.js';
import { evenly } from '../../evenly.js';
import { planOf } from '../../planetarySets.js';
import { referenceSet, setOf } from '../../sets.js';

describe('the space between sun, ring and two planets', () => {
  const anySpace = fc
    .record({
      sunTip: evenly(2, 30),
      planetTip: evenly(2, 30),
      count: fc.integer({ min: 2, max: 12 }),
      overlap: evenly(0, 0.15),
    })
    .map(({ sunTip, planetTip, count, overlap }) => {
      const centreDistance = (sunTip + planetTip) * (1 - overlap);
      const ringTip = centreDistance + planetTip * (1 - overlap);
      return { sizes: { centreDistance, sunTip, planetTip, ringTip }, half: Math.PI / count };
    });

  it('holds a circle as large as a search over the whole space finds, and none larger', () => {
    fc.assert(
      fc.property(anySpace, ({ sizes, half }) => {
        const { centreDistance: a, sunTip, planetTip, ringTip } = sizes;
        let best = Number.NEGATIVE_INFINITY;
        // The space from one planet (at +half) to the other, in polar steps.
        for (let i = 0; i <= 400; i++)
          for (let j = -40; j <= 40; j++) {
            const r = sunTip + ((ringTip - sunTip) * i) / 400;
            const t = (half * j) / 40;
            const away = (at: number) =>
              Math.sqrt(Math.max(0, a * a + r * r - 2 * a * r * Math.cos(at - t))) - planetTip;
            best = Math.max(best, Math.min(r - sunTip, ringTip - r, away(half), away(-half)));
          }
        const found = spaceRadius(sizes, half);
        const step = (ringTip - sunTip) / 400;
        // Where planets overlap there is no space, and how little of it does not matter.
        if (best > 0) expect(found).toBeGreaterThanOrEqual(best - 1e-9);
        expect(found).toBeLessThanOrEqual(Math.max(0, best) + step);
      }),
      { numRuns: 40 },
    );
  });

  it('by hand: far from any planet it is half of what lies between sun and ring', () => {
    expect(spaceRadius({ centreDistance: 20, sunTip: 15, planetTip: 5.5, ringTip: 25 }, Math.PI / 2)).toBe(5);
  });
});

describe('openings of a set', () => {
  it.each([
    ['round', { shape: 'round', diameter: 8 }, 8],
    ['hexagon', { shape: 'hexagon', acrossFlats: 6.6 }, 6.6],
    ['square', { shape: 'square', acrossFlats: 6 }, 6],
    ['D', { shape: 'D', diameter: 8, acrossFlat: 7 }, 7],
  ])('a %s bore lets in a rod of its inscribed circle', (_, bore, diameter) => {
    const gaps = fingerGaps(planOf(referenceSet({ sun: { teeth: 15, bore } })));
    expect(gaps.find(({ where }) => where.includes('bore'))?.diameter).toBe(diameter);
  });

  it('names equal openings once: a space and a throat for equally spaced planets', () => {
    const gaps = fingerGaps(planOf(setOf(15, 15, 45, 5)));
    expect(gaps.map(({ where }) => where)).toEqual([
      'between sun, ring and two planets 72° apart',
      'between two planets 72° apart',
    ]);
    // Neighbour condition of handbooks: 2 a sin(π/N) − d_a, at m_t = 1.5 / cos 30° and a = 15 m_t.
    const a = (15 * 1.5) / Math.cos(Math.PI / 6);
    expect(gaps[1].diameter).toBeCloseTo(2 * a * Math.sin(Math.PI / 5) - (a + 3), 9);
  });
});

describe('the check', () => {
  it.each([
    [4.9, false],
    [5, true],
    [12.5, true],
    [13, false],
  ])('%d mm: caught %s', (diameter, caught) => {
    expect(traps({ where: '', diameter })).toBe(caught);
  });

  it('notes a bore of 8 mm, and not one of 4 mm between small gears', () => {
    const small = (diameter: number) =>
      planOf(setOf(24, 12, 48, 8, { module: 0.8, sun: { teeth: 24, bore: { shape: 'round', diameter } } }));
    expect(check(small(8))).toMatchObject({ holds: false, level: 'note' });
    expect(check(small(8)).says).toContain("the sun's bore up to 8.0 mm");
    expect(check(small(4))).toMatchObject({ holds: true, level: 'note' });
  });
});

import { describe, expect, it } from 'vitest';
import { opening } from '../../../lib/proof/checks/opening.js';
import type { OpeningAsked, PlanetarySpec } from '../../../lib/spec/types.js';
import { planOf, setNumbers } from '../../planetarySets.js';
import { referenceSet, setOf } from '../../sets.js';

const set = setOf(20, 10, 40, 3);
const openingOf = (spec: PlanetarySpec, asked: OpeningAsked) => opening(planOf({ ...spec, opening: asked }));
const drop = (spec = set, edge?: number) => openingOf(spec, { edge }).value!;

describe('the opening check', () => {
  it('is a note without a limit and a must with one', () => {
    expect(opening(planOf(set))).toMatchObject({ holds: true, level: 'note', limit: null });
    expect(openingOf(set, { max: drop() + 0.01 })).toMatchObject({ holds: true, level: 'must' });
    expect(openingOf(set, { max: drop() - 0.01 })).toMatchObject({ holds: false, level: 'must' });
  });

  it('a long edge rests on the outer tangent of both planets: ring tip − (a cos(π/N) + planet tip)', () => {
    const { inner, radii } = setNumbers(referenceSet());
    const rest = inner.centreDistance * Math.cos(Math.PI / 5) + radii.planet.tip;
    expect(drop(referenceSet())).toBeCloseTo(radii.ring.tip - rest, 9);
  });

  it('a shorter edge drops no less', () => {
    expect(drop(set, 12)).toBeGreaterThan(drop(set, 30));
  });

  it('offers more of the same planets, each of which passes', () => {
    const { says } = openingOf(set, { max: 6 });
    const counts = says
      .match(/planets\.count ([\d or]+) with/)![1]
      .split(' or ')
      .map(Number);
    expect(counts.length).toBeGreaterThan(0);
    for (const count of counts) {
      expect((20 + 40) % count).toBe(0);
      expect(drop(setOf(20, 10, 40, count))).toBeLessThanOrEqual(6);
    }
  });

  it('else offers sets that pass', () => {
    const { says } = openingOf(referenceSet(), { max: 2 });
    const offers = [...says.matchAll(/(\d+) \/ (\d+) \/ (\d+) × (\d+)/g)].map((one) =>
      one.slice(1).map(Number),
    );
    expect(offers.length).toBeGreaterThan(0);
    for (const [sun, planet, ring, count] of offers)
      expect(drop(setOf(sun, planet, ring, count))).toBeLessThanOrEqual(2);
  });
});

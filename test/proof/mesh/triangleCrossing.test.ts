import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACET } from '../../../lib/proof/mesh/facets.js';
import { facetsCross } from '../../../lib/proof/mesh/triangleCrossing.js';
import { crossExactly, hasArea } from './exactCrossing.js';
import { facetsFrom } from './facetsFrom.js';
import type { Point } from './fixtures.js';
import { fuzz, uniform } from './fuzz.js';
import { PLACEMENTS, placedPoint } from './placement.js';

function verdicts(a: readonly Point[], b: readonly Point[], slack: number): boolean[] {
  return PLACEMENTS.flatMap((placement) => {
    const [p, q] = [a, b].map((triangle) => triangle.map((corner) => placedPoint(corner, placement)));
    return [0, 1, 2].flatMap((turn) => {
      const facets = facetsFrom([p[turn], p[(turn + 1) % 3], p[(turn + 2) % 3]], q);
      const allowed = slack * placement.scale;
      return [facetsCross(facets, 0, facets, FACET, allowed), facetsCross(facets, FACET, facets, 0, allowed)];
    });
  });
}

describe('facetsCross', () => {
  const base: Point[] = [
    [0, 0, 0],
    [4, 0, 0],
    [0, 4, 0],
  ];
  const cases: { name: string; other: Point[]; crosses: boolean }[] = [
    {
      name: 'an edge through the face',
      other: [
        [1, 1, -1],
        [1, 1, 1],
        [9, 9, 0],
      ],
      crosses: true,
    },
    {
      name: 'a face through an edge',
      other: [
        [2, -1, -1],
        [2, -1, 1],
        [2, 1, 0],
      ],
      crosses: true,
    },
    {
      name: 'a corner on the face',
      other: [
        [1, 1, 0],
        [1, 2, 3],
        [2, 1, 3],
      ],
      crosses: false,
    },
    {
      name: 'a corner below the face',
      other: [
        [1, 1, -1e-6],
        [1, 2, 3],
        [2, 1, 3],
      ],
      crosses: true,
    },
    {
      name: 'an edge on the face',
      other: [
        [1, 1, 0],
        [2, 1, 0],
        [1, 1, 3],
      ],
      crosses: false,
    },
    {
      name: 'an edge across an edge, touching',
      other: [
        [1, 0, -1],
        [1, 0, 1],
        [1, -3, 0],
      ],
      crosses: false,
    },
    {
      name: 'a common corner, apart',
      other: [
        [0, 0, 0],
        [1, 1, 3],
        [2, 1, 3],
      ],
      crosses: false,
    },
    {
      name: 'a common corner, through the face',
      other: [
        [0, 0, 0],
        [1, 1, 3],
        [2, 3, -3],
      ],
      crosses: true,
    },
    {
      name: 'a common corner, through the far edge',
      other: [
        [0, 0, 0],
        [9, 8, 1],
        [8, 9, -1],
      ],
      crosses: true,
    },
    {
      name: 'a common corner, behind it',
      other: [
        [0, 0, 0],
        [-1, -1, 3],
        [-1, -2, -3],
      ],
      crosses: false,
    },
    {
      name: 'a common corner, an edge along the face',
      other: [
        [0, 0, 0],
        [1, 1, 0],
        [1, 1, 3],
      ],
      crosses: false,
    },
    {
      name: 'a common corner, one plane, apart',
      other: [
        [0, 0, 0],
        [-1, 3, 0],
        [-3, 1, 0],
      ],
      crosses: false,
    },
    {
      name: 'a common corner, one plane, lapping',
      other: [
        [0, 0, 0],
        [1, 2, 0],
        [-1, 3, 0],
      ],
      crosses: true,
    },
    {
      name: 'a common edge, square',
      other: [
        [4, 0, 0],
        [0, 0, 0],
        [1, 0, 3],
      ],
      crosses: false,
    },
    {
      name: 'a common edge, flat',
      other: [
        [4, 0, 0],
        [0, 0, 0],
        [1, -3, 0],
      ],
      crosses: false,
    },
    {
      name: 'a common edge, folded back',
      other: [
        [4, 0, 0],
        [0, 0, 0],
        [1, 3, 0],
      ],
      crosses: true,
    },
    {
      name: 'a common edge, nearly folded',
      other: [
        [4, 0, 0],
        [0, 0, 0],
        [1, 3, 1e-6],
      ],
      crosses: false,
    },
    { name: 'the same triangle', other: base, crosses: true },
    { name: 'the same triangle turned over', other: [base[0], base[2], base[1]], crosses: true },
    {
      name: 'one inside the other, one plane',
      other: [
        [1, 1, 0],
        [2, 1, 0],
        [1, 2, 0],
      ],
      crosses: true,
    },
    {
      name: 'one inside the other, a hair above',
      other: [
        [1, 1, 1e-6],
        [2, 1, 1e-6],
        [1, 2, 1e-6],
      ],
      crosses: false,
    },
    {
      name: 'side by side, one plane',
      other: [
        [1, 0, 0],
        [3, 0, 0],
        [2, -3, 0],
      ],
      crosses: false,
    },
  ];
  for (const { name, other, crosses } of cases)
    it(`tells ${name}`, () => {
      expect(new Set(verdicts(base, other, 1e-10))).toEqual(new Set([crosses]));
    });

  it('agrees with exact arithmetic on small whole corners, where touching of every kind abounds', () => {
    const coordinate = fc.integer({ min: 0, max: 4 });
    const point = fc.tuple(coordinate, coordinate, coordinate);
    const triangle = fc.tuple(point, point, point);
    const seen = { crossing: 0, touching: 0 };
    fuzz(
      fc.property(triangle, triangle, (a, b) => {
        fc.pre(hasArea(a) && hasArea(b));
        const expected = crossExactly(a, b);
        if (expected) seen.crossing++;
        else seen.touching++;
        expect(new Set(verdicts(a, b, 1e-11))).toEqual(new Set([expected]));
      }),
      5000,
    );
    expect(Math.min(seen.crossing, seen.touching)).toBeGreaterThan(100);
  });

  it('agrees with exact arithmetic on slivers a million times as long as wide that share a corner', () => {
    const wide = uniform(-1e6, 1e6).map(Math.round);
    const narrow = fc.integer({ min: -2, max: 2 });
    const seen = { crossing: 0, touching: 0 };
    fuzz(
      fc.property(
        fc.tuple(wide, wide, wide),
        fc.array(fc.tuple(narrow, narrow, narrow), { minLength: 4, maxLength: 4 }),
        (far, [p, q, r, s]) => {
          const near = (by: Point): Point => [far[0] + by[0], far[1] + by[1], far[2] + by[2]];
          const a: Point[] = [[0, 0, 0], near(p), near(q)];
          const b: Point[] = [[0, 0, 0], near(r), near(s)];
          fc.pre(hasArea(a) && hasArea(b));
          const expected = crossExactly(a, b);
          if (expected) seen.crossing++;
          else seen.touching++;
          // Turned corners are rounded by 1e-10, and what is meant to cross crosses by 1e-7 at least.
          expect(new Set(verdicts(a, b, 5e-9))).toEqual(new Set([expected]));
        },
      ),
      3000,
    );
    expect(Math.min(seen.crossing, seen.touching)).toBeGreaterThan(30);
  });

  it('takes edges that touch at an angle of a millionth as touching', () => {
    const wide = uniform(-1e6, 1e6).map(Math.round);
    const narrow = fc.integer({ min: -2, max: 2 });
    fuzz(
      fc.property(
        fc.tuple(wide, wide, wide),
        fc.tuple(narrow, narrow, narrow),
        fc.tuple(wide, wide, wide),
        (far, by, apex) => {
          const next: Point = [far[0] + by[0], far[1] + by[1], far[2] + by[2]];
          const back = ([x, y, z]: Point): Point => [-x, -y, -z];
          const a: Point[] = [far, back(far), apex];
          const b: Point[] = [next, back(next), back(apex)];
          fc.pre(hasArea(a) && hasArea(b) && hasArea([[0, 0, 0], far, next]));
          fc.pre(!crossExactly(a, b));
          expect(new Set(verdicts(a, b, 5e-9))).toEqual(new Set([false]));
        },
      ),
      1000,
    );
  });

  it('counts a speck as lying on a face when all of it is within the slack', () => {
    const speck = (height: number): Point[] => [
      [1, 1, 0],
      [1.01, 1, height],
      [1, 1.01, -height],
    ];
    expect(new Set(verdicts(base, speck(0.0009), 0.001))).toEqual(new Set([true]));
    expect(new Set(verdicts(base, speck(0.0002), 0.001))).toEqual(new Set([true]));
  });
});

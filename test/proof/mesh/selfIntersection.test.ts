import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACET } from '../../../lib/proof/mesh/facets.js';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { facetsCross } from '../../../lib/proof/mesh/triangleCrossing.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { crossExactly } from './exactCrossing.js';
import {
  box,
  facetsFrom,
  fuzz,
  lumps,
  meshOf,
  PLACEMENTS,
  type Point,
  placed,
  placedPoint,
  placements,
  sphere,
  star,
  together,
  torus,
} from './fixtures.js';

const STAR = { teeth: 13, perTooth: 40, layers: 6, radius: 12, depth: 3, height: 20, bore: 4, twist: 0.35 };

function moved(mesh: Mesh, ...shift: Point): Mesh {
  return placed(mesh, { turns: [0, 0, 0], scale: 1, mirrored: false, shift });
}

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

  it('agrees with exact arithmetic on long slivers that share a corner', () => {
    const wide = fc.integer({ min: -1000, max: 1000 });
    const narrow = fc.integer({ min: -2, max: 2 });
    fuzz(
      fc.property(
        fc.tuple(wide, wide, wide),
        fc.array(fc.tuple(narrow, narrow, narrow), { minLength: 4, maxLength: 4 }),
        (far, [p, q, r, s]) => {
          const near = (by: Point): Point => [far[0] + by[0], far[1] + by[1], far[2] + by[2]];
          const a: Point[] = [[0, 0, 0], near(p), near(q)];
          const b: Point[] = [[0, 0, 0], near(r), near(s)];
          fc.pre(hasArea(a) && hasArea(b));
          expect(new Set(verdicts(a, b, 1e-9))).toEqual(new Set([crossExactly(a, b)]));
        },
      ),
      5000,
    );
  });
});

function hasArea([a, b, c]: readonly Point[]): boolean {
  const [u, v] = [b, c].map((p) => p.map((value, axis) => value - a[axis]));
  return u[1] * v[2] !== u[2] * v[1] || u[2] * v[0] !== u[0] * v[2] || u[0] * v[1] !== u[1] * v[0];
}

describe('selfIntersections', () => {
  const cube = box([0, 0, 0], [1, 1, 1]);
  const clean: [string, Mesh][] = [
    ['a cube', cube],
    ['a sphere', sphere(4)],
    ['a torus', torus(4, 1, 40, 20)],
    ['a twisted star', star(STAR)],
    ['a star with strips the whole length', star({ ...STAR, layers: 2, perTooth: 90 })],
    ['a twisted ring', star({ ...STAR, bore: 0, wall: 20 })],
    ['a star in a ring', together(star(STAR), star({ ...STAR, radius: 12.1, bore: 0, wall: 20 }))],
    ['cubes that touch along an edge', together(cube, moved(cube, 1, 1, 0.25))],
    ['cubes that touch at a corner', together(cube, moved(cube, 1, 1, 1))],
    ['cubes a micrometre apart', together(cube, moved(cube, 1.001, 0.25, 0.25))],
    ['cubes a nanometre apart', together(cube, moved(cube, 1.000001, 0.25, 0.25))],
  ];
  for (const [name, mesh] of clean)
    it(`finds ${name} clean`, () => {
      for (const placement of PLACEMENTS) expect(selfIntersections(placed(mesh, placement))).toEqual([]);
    });

  const crossing: [string, Mesh][] = [
    ['cubes that cross', together(cube, moved(cube, 0.5, 0.25, 0.125))],
    ['cubes that cross by a nanometre', together(cube, moved(cube, 0.999999, 0.25, 0.125))],
    ['cubes that lie face on face', together(cube, moved(cube, 1, 0.25, 0.125))],
    ['a cube upon itself', together(cube, cube)],
    ['a sphere with a vertex pushed out at the far side', pushed(sphere(3), 0, [-1.5, 0.01, 0.02])],
    ['a sphere with a vertex pulled over its neighbours', pushed(sphere(3), 0, [0.8, 0.9, 0])],
    ['a star whose bore breaks through its roots', star({ ...STAR, bore: 10.8 })],
    [
      'a star through a ring that is too small',
      together(star(STAR), star({ ...STAR, radius: 11.8, bore: 0, wall: 20 })),
    ],
  ];
  for (const [name, mesh] of crossing)
    it(`finds ${name} crossing`, () => {
      for (const placement of PLACEMENTS) {
        const pairs = selfIntersections(placed(mesh, placement));
        expect(pairs.length).toBeGreaterThan(0);
        for (const [i, j] of pairs) expect(i).toBeLessThan(j);
      }
    });

  it('stops after as many pairs as asked for', () => {
    const mesh = together(cube, cube);
    expect(selfIntersections(mesh, undefined, 3)).toHaveLength(3);
    expect(selfIntersections(mesh, triangleTree(mesh), 1000).length).toBeGreaterThanOrEqual(12);
    expect(selfIntersections(mesh, triangleTree(mesh), 0)).toEqual([]);
  });

  it('finds all pairs, and no other, that a test of every pair finds', () => {
    const coordinate = fc.integer({ min: 0, max: 30 });
    const point = fc.tuple(coordinate, coordinate, coordinate);
    fuzz(
      fc.property(
        fc.array(fc.tuple(point, point, point).filter(hasArea), { minLength: 40, maxLength: 40 }),
        placements(20),
        (triangles, placement) => {
          const mesh = meshOf(
            triangles.flat(),
            triangles.map((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]),
          );
          const expected: [number, number][] = [];
          for (let i = 0; i < triangles.length; i++)
            for (let j = i + 1; j < triangles.length; j++)
              if (crossExactly(triangles[i], triangles[j])) expected.push([i, j]);
          // Mirrored meshes list their triangles in reverse, so the mirrored are left out here.
          const found = selfIntersections(
            placed(mesh, { ...placement, mirrored: false }),
            undefined,
            Infinity,
          );
          expect(found.sort(([i, j], [k, l]) => i - k || j - l)).toEqual(expected);
        },
      ),
      100,
    );
  });

  it('finds lumpy balls clean, and crossing when one is pushed into the next', () => {
    fuzz(
      fc.property(lumps, lumps, placements(10), (first, second, placement) => {
        expect(selfIntersections(placed(first, placement))).toEqual([]);
        const apart = together(first, moved(second, 3.1, 0, 0));
        expect(selfIntersections(placed(apart, placement))).toEqual([]);
        const into = together(first, moved(second, 0.9, 0, 0));
        expect(selfIntersections(placed(into, placement)).length).toBeGreaterThan(0);
      }),
      50,
    );
  });
});

function pushed(mesh: Mesh, vertex: number, to: Point): Mesh {
  const positions = mesh.positions.slice();
  positions.set(to, 3 * vertex);
  return { ...mesh, positions };
}

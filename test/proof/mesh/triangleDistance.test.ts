import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACET } from '../../../lib/proof/mesh/facets.js';
import { lowerToFacets, nearest, SQUARE } from '../../../lib/proof/mesh/triangleDistance.js';
import { facetsFrom } from './facetsFrom.js';
import type { Point } from './fixtures.js';
import { fuzz, uniform } from './fuzz.js';
import { PLACEMENTS, placedPoint } from './placement.js';

type Triangle = readonly [Point, Point, Point];

function measure(a: Triangle, b: Triangle): { distance: number; pointA: Point; pointB: Point } {
  const facets = facetsFrom(a, b);
  const found = nearest(Infinity);
  lowerToFacets(facets, 0, facets, FACET, found);
  return {
    distance: Math.sqrt(found[SQUARE]),
    pointA: [found[0], found[1], found[2]],
    pointB: [found[3], found[4], found[5]],
  };
}

const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Point, q: Point) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (u: Point, v: Point): Point => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];
const size = (...triangles: Triangle[]) => Math.max(...triangles.flat(2).map(Math.abs));

/** How far a point is from being a mean of a triangle's corners: distance to the plane and beyond the edges. */
function offTriangle(p: Point, [a, b, c]: Triangle): number {
  // The two shorter sides: the long two of a strip are nearly parallel, and rounding would tilt their normal.
  const sides = [minus(b, a), minus(c, b), minus(a, c)];
  const lengths = sides.map((side) => Math.hypot(...side));
  const longest = lengths.indexOf(Math.max(...lengths));
  const n = cross(sides[(longest + 1) % 3], sides[(longest + 2) % 3]);
  const area = Math.hypot(...n);
  let off = Math.abs(dot(minus(p, a), n)) / area;
  for (const [s, e] of [
    [a, b],
    [b, c],
    [c, a],
  ]) {
    const d = minus(e, s);
    const inward = cross(n, d);
    off = Math.max(off, -dot(minus(p, s), inward) / Math.hypot(...inward));
  }
  return off;
}

/** How far apart two triangles are along a direction: no pair of their points can be nearer than that. */
function apartAlong(direction: Point, a: Triangle, b: Triangle): number {
  const length = Math.hypot(...direction);
  if (length === 0) return 0;
  const [p, q] = [a, b].map((triangle) =>
    triangle.map((corner) => dot(minus(corner, a[0]), direction) / length),
  );
  return Math.max(Math.min(...q) - Math.max(...p), Math.min(...p) - Math.max(...q));
}

/**
 * Proof of a least distance between convex bodies: the points found lie on their triangles, and along some
 * direction (between the points, a normal, or square to an edge of each) the triangles are that far apart.
 */
function expectLeast(a: Triangle, b: Triangle): void {
  const { distance, pointA, pointB } = measure(a, b);
  const scale = size(a, b);
  expect(offTriangle(pointA, a)).toBeLessThan(1e-10 * scale);
  expect(offTriangle(pointB, b)).toBeLessThan(1e-10 * scale);
  expect(Math.hypot(...minus(pointB, pointA))).toBeCloseTo(distance, 9);
  const sides = [a, b].map((t) => [minus(t[1], t[0]), minus(t[2], t[1]), minus(t[0], t[2])]);
  const directions = [minus(pointB, pointA), ...sides.map(([u, v]) => cross(u, v))];
  for (const u of sides[0]) for (const v of sides[1]) directions.push(cross(u, v));
  const least = Math.max(...directions.map((direction) => apartAlong(direction, a, b)), 0);
  // The direction between points at a tiny distance is only as good as the rounding of the points.
  const rounding = 1e-12 * scale + Math.min(distance, (1e-14 * scale * scale) / distance || 0);
  expect(distance - least).toBeLessThan(rounding);
}

describe('lowerToFacets', () => {
  const base: Triangle = [
    [0, 0, 0],
    [4, 0, 0],
    [0, 3, 0],
  ];
  const cases: { name: string; other: Triangle; distance: number }[] = [
    {
      name: 'corner over the face',
      other: [
        [1, 1, 2],
        [1, 1, 5],
        [3, 0, 6],
      ],
      distance: 2,
    },
    {
      name: 'face over a corner',
      other: [
        [-9, -9, -1],
        [9, -9, -1],
        [0, 20, -1],
      ],
      distance: 1,
    },
    {
      name: 'edge across an edge',
      other: [
        [2, -1, -3],
        [2, -1, 3],
        [2, -5, 0],
      ],
      distance: 1,
    },
    {
      name: 'corner to corner',
      other: [
        [-3, -4, 0],
        [-5, -6, 0],
        [-4, -7, 1],
      ],
      distance: 5,
    },
    {
      name: 'corner to edge, in one plane',
      other: [
        [2, -2, 0],
        [1, -5, 0],
        [3, -5, 0],
      ],
      distance: 2,
    },
    {
      name: 'edge through the face',
      other: [
        [1, 1, -1],
        [1, 1, 1],
        [9, 9, 0],
      ],
      distance: 0,
    },
    {
      name: 'common corner',
      other: [
        [0, 0, 0],
        [-1, -1, 3],
        [-2, 1, 3],
      ],
      distance: 0,
    },
    {
      name: 'common edge',
      other: [
        [4, 0, 0],
        [0, 0, 0],
        [2, -3, 1],
      ],
      distance: 0,
    },
    {
      name: 'corner on the face',
      other: [
        [1, 1, 0],
        [1, 2, 3],
        [2, 1, 3],
      ],
      distance: 0,
    },
    {
      name: 'one inside the other, one plane',
      other: [
        [1, 1, 0],
        [1.5, 1, 0],
        [1, 1.2, 0],
      ],
      distance: 0,
    },
    { name: 'the same triangle', other: base, distance: 0 },
    {
      name: 'parallel strips',
      other: [
        [0, -1, 0],
        [4, -1, 0],
        [2, -1.01, 0],
      ],
      distance: 1,
    },
    {
      name: 'a point for a triangle',
      other: [
        [1, 1, 7],
        [1, 1, 7],
        [1, 1, 7],
      ],
      distance: 7,
    },
    {
      name: 'a line for a triangle',
      other: [
        [2, -1, -3],
        [2, -1, 0],
        [2, -1, 3],
      ],
      distance: 1,
    },
  ];
  for (const { name, other, distance } of cases)
    it(`measures ${name}`, () => {
      for (const placement of PLACEMENTS) {
        const moved = (triangle: Triangle) =>
          triangle.map((p) => placedPoint(p, placement)) as unknown as Triangle;
        const [a, b] = [moved(base), moved(other)];
        for (const [p, q] of [
          [a, b],
          [b, a],
        ])
          for (const turn of [0, 1, 2]) {
            const turned = [p[turn], p[(turn + 1) % 3], p[(turn + 2) % 3]] as const;
            expect(measure(turned, q).distance / placement.scale).toBeCloseTo(distance, 11);
          }
      }
    });

  it('lowers a search only to what is nearer', () => {
    const facets = facetsFrom(base, [
      [1, 1, 2],
      [1, 1, 5],
      [3, 0, 6],
    ]);
    const found = nearest(3.9);
    lowerToFacets(facets, 0, facets, FACET, found);
    expect([...found]).toEqual([0, 0, 0, 0, 0, 0, 3.9]);
  });

  const coordinate = uniform(-10, 10);
  const point = fc.tuple(coordinate, coordinate, coordinate);
  const triangle = fc.tuple(point, point, point);

  it('finds points that no other pair can beat: any triangles', () => {
    fuzz(
      fc.property(triangle, triangle, (a, b) => {
        fc.pre(thickness(a) > 1e-3 && thickness(b) > 1e-3);
        expectLeast(a, b);
      }),
      3000,
    );
  });

  it('finds points that no other pair can beat: long strips side by side', () => {
    const small = uniform(-1, 1);
    const near = fc.tuple(small, small, small);
    fuzz(
      fc.property(
        fc.tuple(point, point, near, near, near, near),
        fc.constantFrom(0.05, 1e-3, 1e-5),
        ([s, e, p, q, r, t], width) => {
          const along = (at: Point, by: Point, scale: number): Point => [
            at[0] + scale * by[0],
            at[1] + scale * by[1],
            at[2] + scale * by[2],
          ];
          const a: Triangle = [s, e, along(s, p, width)];
          const b: Triangle = [along(s, q, 3 * width), along(e, r, 3 * width), along(e, t, 3 * width)];
          fc.pre(thickness(a) > width / 100 && thickness(b) > width / 100);
          expectLeast(a, b);
        },
      ),
      3000,
    );
  });

  it('measures a gap between parallel slivers to the rounding of their corners', () => {
    for (const gap of [0.25, 1e-3, 1e-6, 1e-9])
      for (const width of [1e-2, 1e-6, 1e-9]) {
        const a: Triangle = [
          [0, 0, 0],
          [10, 0, 0],
          [3, width, 0],
        ];
        const b: Triangle = [
          [0, 0, gap],
          [9, 0, gap],
          [7, -width, gap],
        ];
        expect(Math.abs(measure(a, b).distance - gap)).toBeLessThan(1e-15);
      }
  });
});

function thickness([a, b, c]: Triangle): number {
  const [u, v, w] = [minus(b, a), minus(c, a), minus(c, b)];
  const area = Math.hypot(...cross(u, v));
  return area / Math.max(Math.hypot(...u), Math.hypot(...v), Math.hypot(...w), 1e-300);
}

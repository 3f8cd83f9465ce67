import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACET } from '../../../lib/proof/mesh/facets.js';
import { leastDistance } from '../../../lib/proof/mesh/leastDistance.js';
import { lowerToFacets, nearest, SQUARE } from '../../../lib/proof/mesh/triangleDistance.js';
import { type TriangleTree, triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { Refusal } from '../../../lib/refusal.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { box, sphere, star, together, torus, turnedOver } from './fixtures.js';
import { fuzz, lumps, placements } from './fuzz.js';
import { PLACEMENTS, type Placement, placed } from './placement.js';

function distanceOf(a: Mesh, b: Mesh, within = Infinity) {
  return leastDistance(triangleTree(a), triangleTree(b), within);
}

function moved(mesh: Mesh, ...shift: [number, number, number]): Mesh {
  return placed(mesh, { turns: [0, 0, 0], scale: 1, mirrored: false, shift });
}

/** Every pair of triangles measured. */
function bruteForce(a: TriangleTree, b: TriangleTree): number {
  const found = nearest(Infinity);
  for (let p = 0; p < a.facets.length; p += FACET)
    for (let q = 0; q < b.facets.length; q += FACET) lowerToFacets(a.facets, p, b.facets, q, found);
  return Math.sqrt(found[SQUARE]);
}

/** A box with a box-shaped hollow inside it. */
function hollowBox(outer: number, inner: number): Mesh {
  return together(
    box([-outer, -outer, -outer], [outer, outer, outer]),
    turnedOver(box([-inner, -inner, -inner], [inner, inner, inner])),
  );
}

describe('leastDistance', () => {
  const cube = box([0, 0, 0], [1, 1, 1]);
  const cases: { name: string; a: Mesh; b: Mesh; distance: number; inside?: boolean }[] = [
    { name: 'cubes face to face', a: cube, b: moved(cube, 1.25, 0.5, 0.5), distance: 0.25 },
    { name: 'cubes edge to edge', a: cube, b: moved(cube, 4, 5, 0.5), distance: 5 },
    { name: 'cubes corner to corner', a: cube, b: moved(cube, 2, 3, 3), distance: 3 },
    { name: 'cubes that touch', a: cube, b: moved(cube, 1, 0.25, 0.25), distance: 0 },
    { name: 'cubes that cross', a: cube, b: moved(cube, 0.5, 0.25, 0.125), distance: 0 },
    { name: 'the same cube', a: cube, b: cube, distance: 0 },
    { name: 'octahedra point to point', a: sphere(3), b: moved(sphere(3), 3, 0, 0), distance: 1 },
    { name: 'a ball in a hollow', a: hollowBox(4, 2), b: sphere(3), distance: 1 },
    {
      name: 'an octahedron in a square ring',
      a: torus(5, 1, 4, 4),
      b: sphere(0),
      distance: 3 / Math.SQRT2,
    },
    { name: 'a ball in a box', a: box([-4, -4, -4], [4, 4, 4]), b: sphere(2), distance: 0, inside: true },
    {
      name: 'one of two balls in a box',
      a: box([-4, -4, -4], [4, 4, 4]),
      b: together(moved(sphere(2), 9, 0, 0), sphere(2)),
      distance: 0,
      inside: true,
    },
    {
      name: 'a ball in the wall of a hollow box',
      a: hollowBox(8, 2),
      b: moved(sphere(2), 5, 0, 0),
      distance: 0,
      inside: true,
    },
  ];
  for (const { name, a, b, distance, inside = false } of cases)
    it(`measures ${name}`, () => {
      for (const placement of PLACEMENTS)
        for (const pair of [
          [a, b],
          [b, a],
        ]) {
          const [first, second] = pair.map((mesh) => placed(mesh, placement));
          const found = distanceOf(first, second)!;
          expect(found.inside).toBe(inside);
          expect(found.distance / placement.scale).toBeCloseTo(distance, 10);
          const between = found.pointB.map((value, axis) => value - found.pointA[axis]);
          expect(Math.hypot(...between) / placement.scale).toBeCloseTo(distance, 10);
        }
    });

  const comb = { teeth: 11, perTooth: 10, layers: 4, depth: 2, height: 9, twist: 0.3 };
  const close: [string, Mesh, Mesh][] = [
    [
      'a comb in its counterpart, the same gap all round',
      star({ ...comb, radius: 10, bore: 3 }),
      star({ ...comb, radius: 12.25, bore: 0, wall: 16 }),
    ],
    ['linked rings', torus(5, 1, 40, 20), placed(torus(5, 1, 40, 20), link())],
    ['a planet in a ring', star({ ...comb, radius: 12.25, bore: 0, wall: 16 }), moved(sphere(3), 3, 5, 4)],
  ];
  for (const [name, first, second] of close)
    it(`agrees with measuring every pair of ${name}`, () => {
      const [a, b] = [triangleTree(first), triangleTree(second)];
      const found = leastDistance(a, b, 5)!;
      expect(found.inside).toBe(false);
      expect(found.distance).toBeGreaterThan(0);
      expect(found.distance).toBeCloseTo(bruteForce(a, b), 12);
    });

  it('tells null beyond the distance of interest, and not at it', () => {
    const b = moved(cube, 1.25, 0, 0);
    expect(distanceOf(cube, b, 0.2499)).toBeNull();
    expect(distanceOf(cube, b, 0.25)!.distance).toBe(0.25);
    expect(distanceOf(cube, b, 0)).toBeNull();
    expect(distanceOf(cube, moved(cube, 1, 0, 0), 0)!.distance).toBe(0);
    expect(distanceOf(hollowBox(8, 2), moved(sphere(2), 5, 0, 0), 0.1)!.inside).toBe(true);
  });

  it('refuses a distance of interest that is none', () => {
    for (const within of [-1, Number.NaN]) expect(() => distanceOf(cube, cube, within)).toThrow(Refusal);
  });

  it('agrees with measuring every pair of triangles', () => {
    let apart = 0;
    fuzz(
      fc.property(lumps, lumps, placements(3), placements(3), (first, second, here, there) => {
        const [a, b] = [triangleTree(placed(first, here)), triangleTree(placed(second, there))];
        const found = leastDistance(a, b, Infinity)!;
        const every = bruteForce(a, b);
        if (found.inside) {
          expect(every).toBeGreaterThan(0);
          // A star-shaped body holds its own centre, so the inner one's centre must be near the outer's.
          const [outer, inner] = here.scale > there.scale ? [here, there] : [there, here];
          const centres = inner.shift.map((value, axis) => value - outer.shift[axis]);
          expect(Math.hypot(...centres)).toBeLessThan(1.5 * outer.scale);
          return;
        }
        if (every > 0) apart++;
        expect(found.distance).toBeCloseTo(every, 12);
        const within = every * 1.5;
        expect(leastDistance(b, a, within)!.distance).toBeCloseTo(every, 12);
        if (every > 0) expect(leastDistance(a, b, every * 0.999)).toBeNull();
      }),
      150,
    );
    expect(apart).toBeGreaterThan(20);
  });
});

/** Moves one link of a chain into the other. */
function link(): Placement {
  return { turns: [Math.PI / 2, 0, 0], scale: 1, mirrored: false, shift: [5, 0, 0] };
}

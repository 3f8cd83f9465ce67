import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { Refusal } from '../../../lib/refusal.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { crossExactly, hasArea } from './exactCrossing.js';
import { box, meshOf, type Point, sphere, star, together, torus } from './fixtures.js';
import { fuzz, lumps, placements } from './fuzz.js';
import { PLACEMENTS, placed } from './placement.js';

const STAR = { teeth: 13, perTooth: 40, layers: 6, radius: 12, depth: 3, height: 20, bore: 4, twist: 0.35 };

function moved(mesh: Mesh, ...shift: Point): Mesh {
  return placed(mesh, { turns: [0, 0, 0], scale: 1, mirrored: false, shift });
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
    for (const most of [0, -1, Number.NaN])
      expect(() => selfIntersections(mesh, triangleTree(mesh), most)).toThrow(Refusal);
    expect(() => selfIntersections(mesh, triangleTree(cube))).toThrow(Refusal);
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

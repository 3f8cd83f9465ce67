import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EdgeDefects, edgeDefects } from '../../../lib/proof/mesh/edges.js';
import { Refusal } from '../../../lib/refusal.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { box, meshOf, type Point, sphere, star, together, torus, turnedOver } from './fixtures.js';
import { fuzz, lumps } from './fuzz.js';
import { PLACEMENTS, placed } from './placement.js';

const SOUND: Omit<EdgeDefects, 'shells' | 'eulerCharacteristic' | 'genus'> = {
  open: 0,
  doubled: 0,
  misoriented: 0,
  duplicateVertices: 0,
  unusedVertices: 0,
  degenerateTriangles: 0,
  nonManifoldVertices: 0,
  watertight: true,
};

/** The mesh with its triangle list changed. */
function edited(mesh: Mesh, edit: (triangles: Point[]) => Point[]): Mesh {
  const list: Point[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3)
    list.push([mesh.triangles[i], mesh.triangles[i + 1], mesh.triangles[i + 2]]);
  return { positions: mesh.positions, triangles: Uint32Array.from(edit(list).flat()) };
}

/** The mesh with triangles naming vertex `from` made to name vertex `to`. */
function merged(mesh: Mesh, from: number, to: number): Mesh {
  return { ...mesh, triangles: mesh.triangles.map((index) => (index === from ? to : index)) };
}

describe('edgeDefects', () => {
  const sound: { name: string; mesh: Mesh; shells: number; eulerCharacteristic: number; genus: number }[] = [
    { name: 'cube', mesh: box([0, 0, 0], [1, 1, 1]), shells: 1, eulerCharacteristic: 2, genus: 0 },
    { name: 'sphere', mesh: sphere(4), shells: 1, eulerCharacteristic: 2, genus: 0 },
    { name: 'torus', mesh: torus(4, 1, 30, 12), shells: 1, eulerCharacteristic: 0, genus: 1 },
    {
      name: 'star with a bore',
      mesh: star({
        teeth: 11,
        perTooth: 20,
        layers: 6,
        radius: 10,
        depth: 3,
        height: 9,
        bore: 3,
        twist: 0.3,
      }),
      shells: 1,
      eulerCharacteristic: 0,
      genus: 1,
    },
    {
      name: 'two spheres and a torus',
      mesh: together(sphere(1), torus(9, 2, 12, 5), turnedOver(sphere(0))),
      shells: 3,
      eulerCharacteristic: 4,
      genus: 1,
    },
  ];
  for (const { name, mesh, ...topology } of sound)
    it(`finds nothing wrong with a ${name}`, () => {
      for (const placement of PLACEMENTS) {
        // The two spheres of the group share the octahedron's corners, which is a matter of places, not edges.
        const { duplicateVertices, ...rest } = edgeDefects(placed(mesh, placement));
        const { duplicateVertices: none, ...expected } = SOUND;
        expect(rest).toEqual({ ...expected, ...topology });
        expect(duplicateVertices).toBe(name.startsWith('two') ? 6 : none);
      }
    });

  const ball = sphere(2);
  const broken: { name: string; mesh: Mesh; defects: Partial<EdgeDefects> }[] = [
    {
      name: 'a missing triangle',
      mesh: edited(ball, (list) => list.slice(1)),
      defects: { open: 3, watertight: false, genus: null, shells: 1, eulerCharacteristic: 1 },
    },
    {
      name: 'a triangle turned over',
      mesh: edited(ball, ([[a, b, c], ...rest]) => [[a, c, b], ...rest]),
      defects: { misoriented: 3, nonManifoldVertices: 0, watertight: false, genus: null },
    },
    {
      name: 'a triangle twice',
      mesh: edited(ball, (list) => [...list, list[7]]),
      defects: { doubled: 3, open: 0, misoriented: 0, watertight: false },
    },
    {
      name: 'a fin on an edge',
      mesh: edited({ ...ball, positions: Float64Array.of(...ball.positions, 2, 2, 2) }, (list) => [
        ...list,
        [list[0][0], list[0][1], 66],
      ]),
      defects: { doubled: 1, open: 2, misoriented: 0, unusedVertices: 0, watertight: false },
    },
    {
      name: 'two balls joined at one vertex',
      mesh: merged(together(sphere(1), sphere(1)), 18, 0),
      defects: { nonManifoldVertices: 1, unusedVertices: 1, open: 0, shells: 2, watertight: false },
    },
    {
      name: 'a vertex twice in one place',
      mesh: { ...ball, positions: Float64Array.of(...ball.positions, 1, -0, 0) },
      defects: { duplicateVertices: 1, unusedVertices: 1, watertight: true },
    },
    {
      name: 'a triangle that names a vertex twice',
      mesh: edited(ball, (list) => [...list, [5, 5, 9]]),
      defects: { degenerateTriangles: 1, watertight: false },
    },
    {
      name: 'a T-junction closed by a triangle of no area',
      mesh: meshOf(
        [
          [0, 0, 0],
          [2, 0, 0],
          [0, 2, 0],
          [0, 0, 2],
          [1, 0, 0],
        ],
        [
          [0, 2, 1],
          [0, 4, 3],
          [4, 1, 3],
          [0, 1, 4],
          [1, 2, 3],
          [2, 0, 3],
        ],
      ),
      defects: { degenerateTriangles: 1, open: 0, doubled: 0, misoriented: 0, watertight: false },
    },
    {
      name: 'a position that is no number',
      mesh: { ...ball, positions: ball.positions.with(0, Number.NaN) },
      defects: { degenerateTriangles: 4, open: 0, watertight: false },
    },
    {
      name: 'no triangle at all',
      mesh: { positions: new Float64Array(0), triangles: new Uint32Array(0) },
      defects: { shells: 0, watertight: false, genus: null },
    },
  ];
  for (const { name, mesh, defects } of broken)
    it(`counts ${name}`, () => {
      for (const placement of PLACEMENTS) {
        // Turning a mesh would move the two equal corners apart by rounding, or the flat triangle off its line.
        const moved = name.includes('place')
          ? placed(mesh, { ...placement, turns: [0, 0, 0] })
          : placed(mesh, placement);
        expect(edgeDefects(moved)).toMatchObject(defects);
      }
    });

  it('takes 0 and −0 for one place, and numbers next to each other for two', () => {
    const doubled = { ...ball, positions: Float64Array.of(...ball.positions, -0, 1, 0, 0, 1 + 2 ** -52, 0) };
    expect(edgeDefects(doubled).duplicateVertices).toBe(1);
  });

  it('refuses indices that point nowhere', () => {
    expect(() => edgeDefects({ ...ball, triangles: Uint32Array.of(0, 1, 66) })).toThrow(Refusal);
    expect(() => edgeDefects({ ...ball, triangles: Uint32Array.of(0, 1) })).toThrow(Refusal);
  });

  it('agrees with a plain count over any triangles', () => {
    const index = fc.integer({ min: 0, max: 6 });
    fuzz(
      fc.property(fc.array(fc.tuple(index, index, index), { minLength: 1, maxLength: 14 }), (triangles) => {
        const positions = Float64Array.from({ length: 21 }, (_, i) => Math.sin(i * i + 1));
        const defects = edgeDefects({ positions, triangles: Uint32Array.from(triangles.flat()) });
        expect(defects).toMatchObject(plainCount(triangles));
      }),
      2000,
    );
  });

  it('holds for shuffled vertices and triangles', () => {
    fuzz(
      fc.property(lumps, fc.infiniteStream(fc.nat(2 ** 30)), (mesh, numbers) => {
        const order = Array.from(
          { length: mesh.positions.length / 3 },
          (_, i) => [numbers.next().value as number, i] as const,
        ).sort(([p, i], [q, j]) => p - q || i - j);
        const place = new Map(order.map(([, from], to) => [from, to]));
        const positions = Float64Array.from(
          order.flatMap(([, i]) => [...mesh.positions.subarray(3 * i, 3 * i + 3)]),
        );
        const triangles = mesh.triangles.map((i) => place.get(i)!).reverse();
        expect(edgeDefects({ positions, triangles })).toEqual({
          ...SOUND,
          shells: 1,
          eulerCharacteristic: 2,
          genus: 0,
        });
      }),
      30,
    );
  });
});

/** The same counts by maps and searches. */
function plainCount(triangles: readonly Point[]): Partial<EdgeDefects> {
  const uses = new Map<string, { triangle: number; upward: boolean }[]>();
  triangles.forEach((corners, triangle) => {
    corners.forEach((from, k) => {
      const to = corners[(k + 1) % 3];
      const key = `${Math.min(from, to)}-${Math.max(from, to)}`;
      uses.set(key, [...(uses.get(key) ?? []), { triangle, upward: from <= to }]);
    });
  });
  const edges = [...uses.values()];
  const together = (uses: { triangle: number }[]) => uses.map(({ triangle }) => triangle);
  const all = triangles.map((_, i) => i);
  const groups = pieces(all, edges.map(together));
  const fans = [0, 1, 2, 3, 4, 5, 6].map((vertex) => {
    const beside = [...uses.entries()].filter(
      ([key, use]) => key.includes(String(vertex)) && use.length === 2,
    );
    const around = all.filter((i) => triangles[i].includes(vertex));
    return pieces(
      around,
      beside.map(([, use]) => together(use)),
    );
  });
  const degenerateTriangles = triangles.filter((corners) => new Set(corners).size < 3).length;
  return {
    open: edges.filter((edge) => edge.length === 1).length,
    doubled: edges.filter((edge) => edge.length > 2).length,
    misoriented: edges.filter((edge) => edge.length === 2 && edge[0].upward === edge[1].upward).length,
    degenerateTriangles,
    unusedVertices: 7 - new Set(triangles.flat()).size,
    shells: groups,
    eulerCharacteristic: new Set(triangles.flat()).size - edges.length + triangles.length,
    // A triangle that names a vertex twice has two corners there, which this count does not tell apart.
    ...(degenerateTriangles === 0 ? { nonManifoldVertices: fans.filter((count) => count > 1).length } : {}),
  };
}

/** How many groups members fall into when each link joins those it names. */
function pieces(members: readonly number[], links: readonly (readonly number[])[]): number {
  const group = new Map(members.map((member) => [member, member]));
  for (let again = true; again; ) {
    again = false;
    for (const link of links) {
      const least = Math.min(...link.map((member) => group.get(member)!));
      for (const member of link) {
        if (group.get(member) === least) continue;
        group.set(member, least);
        again = true;
      }
    }
  }
  return new Set(group.values()).size;
}

// The bridge to @jscad/modeling. Outside checks: manifold-3d, which takes only closed oriented meshes, and
// closed forms of volumes.

import { booleans, geometries, primitives, transforms } from '@jscad/modeling';
import fc from 'fast-check';
import Module, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { fromGeom3, type Geom3, toGeom3 } from '../../lib/solid/geom3.js';
import type { Mesh } from '../../lib/solid/mesh.js';
import { evenly } from '../evenly.js';
import { ball, box, openEdges, twistedPrism, volumeOf } from '../write/meshes.js';
import { spinner } from '../write/sheets.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await Module();
  kernel.setup();
});

/** Volume according to manifold-3d, which throws for a mesh that is not 2-manifold and oriented. */
function kernelVolume({ positions, triangles }: Mesh): number {
  const vertProperties = Float32Array.from(positions);
  const solid = new kernel.Manifold(new kernel.Mesh({ numProp: 3, vertProperties, triVerts: triangles }));
  expect(solid.status()).toBe('NoError');
  return solid.volume();
}

/** Volume of a boolean made by manifold-3d, mm³. */
function kernelBoolean(operation: 'union' | 'subtract' | 'intersect', a: Mesh, b: Mesh): number {
  const solids = [a, b].map(
    ({ positions, triangles }) =>
      new kernel.Manifold(
        new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles }),
      ),
  );
  const made = { union: 'add', subtract: 'subtract', intersect: 'intersect' } as const;
  return solids[0][made[operation]](solids[1]).volume();
}

/** Coordinates of every triangle in order. */
function cornersOf({ positions, triangles }: Mesh): number[][] {
  return Array.from(triangles, (v) => Array.from(positions.subarray(3 * v, 3 * v + 3)));
}

/** Closed, each vertex once and used, and taken by the kernel as having the same volume. */
function expectSound(mesh: Mesh): void {
  expect(openEdges(mesh)).toBe(0);
  const places = new Set<string>();
  for (let i = 0; i < mesh.positions.length; i += 3) places.add(mesh.positions.subarray(i, i + 3).join(' '));
  expect(places.size).toBe(mesh.positions.length / 3);
  expect(new Set(mesh.triangles).size).toBe(places.size);
  expect(kernelVolume(mesh) / volumeOf(mesh)).toBeCloseTo(1, 5);
}

const reference = buildSet({ ...spinner(), tolerance: 0.05 });

const meshes: [string, Mesh][] = [
  ['box', box([-1.1, 2.2, 0], [3.3, 4.4, 5.5])],
  ['twisted prism', twistedPrism(17, 12.34, 20, 0.9, 30)],
  ['ball', ball(1 / 3, 50)],
  ['sun of the reference set', reference[0].mesh],
  ['ring of the reference set', reference[6].mesh],
  ['sub-micron box', box([0, 0, 0], [1e-7, 2e-7, 3e-7])],
];

describe('toGeom3', () => {
  test.each(meshes.slice(0, 5))('makes a geometry that @jscad/modeling finds valid: %s', (_, mesh) => {
    const solid = toGeom3(mesh, 'sun');
    expect(geometries.geom3.isA(solid)).toBe(true);
    expect(solid.name).toBe('sun');
    expect(() => geometries.geom3.validate(solid)).not.toThrow();
  });

  test.each(meshes)('and back is exact: %s', (_, mesh) => {
    const back = fromGeom3(toGeom3(mesh));
    expect(cornersOf(back)).toEqual(cornersOf(mesh));
    expect(back.positions.length).toBe(mesh.positions.length);
  });
});

describe('fromGeom3', () => {
  test('cuts convex polygons and joins their corners', () => {
    const mesh = fromGeom3(primitives.cuboid({ size: [2, 3, 4] }));
    expect(mesh.positions.length / 3).toBe(8);
    expect(mesh.triangles.length / 3).toBe(12);
    expectSound(mesh);
    expect(volumeOf(mesh)).toBeCloseTo(24, 12);
  });

  test('applies transforms, mirroring ones without turning the solid inside out', () => {
    const solid = transforms.mirrorX(transforms.translate([3, 4, 5], primitives.cuboid({ size: [2, 2, 2] })));
    const before = JSON.stringify(solid);
    const mesh = fromGeom3(solid);
    expect(JSON.stringify(solid)).toBe(before);
    expectSound(mesh);
    expect(volumeOf(mesh)).toBeCloseTo(8, 12);
    const [xs, ys, zs] = [0, 1, 2].map((axis) => mesh.positions.filter((_, i) => i % 3 === axis));
    const ends = [xs, ys, zs].flatMap((values) => [Math.min(...values), Math.max(...values)]);
    expect(ends.map((value) => Number(value.toFixed(9)))).toEqual([-4, -2, 3, 5, 4, 6]);
  });

  test('mends T-junctions by putting the corner into the edge', () => {
    // The top of a unit cube in two halves, its sides whole: the seam ends amid two edges.
    const solid = primitives.cuboid({ size: [1, 1, 1], center: [0.5, 0.5, 0.5] });
    const rest = solid.polygons.filter(({ vertices }) => !vertices.every(([, , z]) => z === 1));
    const half = (x0: number, x1: number): Geom3['polygons'][number] => ({
      vertices: [
        [x0, 0, 1],
        [x1, 0, 1],
        [x1, 1, 1],
        [x0, 1, 1],
      ],
    });
    const split = { ...solid, polygons: [...rest, half(0, 0.3), half(0.3, 1)] };
    const mesh = fromGeom3(split);
    expectSound(mesh);
    expect(volumeOf(mesh)).toBeCloseTo(1, 12);
    const seam = cornersOf(mesh).filter(([x, y, z]) => x === 0.3 && z === 1 && (y === 0 || y === 1));
    expect(seam.length).toBeGreaterThan(4);
    for (const height of heights(mesh)) expect(height).toBeGreaterThan(0.1);
  });

  // A cylinder of n sides has the volume n/2 r² sin(2π/n) h.
  const column = (n: number, r: number, h: number) => (n / 2) * r * r * Math.sin((2 * Math.PI) / n) * h;
  const plate = primitives.cuboid({ size: [30, 30, 4] });
  const pin = primitives.cylinder({ radius: 5, height: 12, segments: 48 });
  test.each<[string, () => Geom3, number]>([
    ['a pin through a plate', () => booleans.union(plate, pin), 3600 + column(48, 5, 8)],
    ['a hole in a plate', () => booleans.subtract(plate, pin), 3600 - column(48, 5, 4)],
    ['what plate and pin share', () => booleans.intersect(plate, pin), column(48, 5, 4)],
    [
      'the same, turned in space',
      () => transforms.rotate([0.3, 0.4, 0.5], booleans.union(plate, pin)),
      3600 + column(48, 5, 8),
    ],
    [
      'a pin that breaks through the rim',
      () => booleans.subtract(plate, transforms.translate([15, 0, 0], pin)),
      3600 - column(48, 5, 4) / 2,
    ],
  ])('reads back closed what a boolean of @jscad/modeling made: %s', (_, make, volume) => {
    const mesh = fromGeom3(make());
    expectSound(mesh);
    expect(volumeOf(mesh)).toBeCloseTo(volume, 6);
  });

  test('reads back closed the union and the difference of a mesh of ours and a tilted solid', () => {
    const body = twistedPrism(31, 20, 20, 0.5, 20);
    const tool = transforms.rotate([0.3, 0.4, 0.1], primitives.torus({ innerRadius: 4, outerRadius: 17 }));
    const tooled = volumeOf(fromGeom3(tool));
    const parts = [booleans.union, booleans.subtract, booleans.intersect].map((join) =>
      fromGeom3(join(toGeom3(body), tool)),
    );
    for (const mesh of parts) expectSound(mesh);
    const [union, difference, common] = parts.map(volumeOf);
    expect(union).toBeCloseTo(volumeOf(body) + tooled - common, 4);
    expect(difference).toBeCloseTo(volumeOf(body) - common, 4);
  });

  test('reads back closed whatever two bodies are joined or cut, with the volume that manifold-3d finds', () => {
    const angle = evenly(-3, 3);
    const place = evenly(-6, 6);
    const sides = fc.integer({ min: 4, max: 24 });
    const operation = fc.constantFrom('union' as const, 'subtract' as const, 'intersect' as const);
    const run = fc.property(
      operation,
      sides,
      fc.tuple(angle, angle, angle),
      fc.tuple(place, place, place),
      (operation, n, turn, by) => {
        const a = toGeom3(twistedPrism(9, 10, 12, 0.6, 4));
        const b = transforms.translate(
          by,
          transforms.rotate(turn, primitives.cylinder({ radius: 5, height: 25, segments: n })),
        );
        const [ours, theirs] = [
          booleans[operation](a, b),
          kernelBoolean(operation, fromGeom3(a), fromGeom3(b)),
        ];
        const mesh = fromGeom3(ours);
        expect(openEdges(mesh)).toBe(0);
        // The kernel's positions are float32, and @jscad/modeling moves corners by some 1e-5 mm.
        expect(Math.abs(volumeOf(mesh) - theirs)).toBeLessThan(0.02);
      },
    );
    fc.assert(run, { numRuns: 60, seed: 20240607 });
  });

  test('reads back closed a ring with a hanger joined to its rim', () => {
    const ring = reference[6].mesh;
    const [outer, height] = [45.846, 20];
    const eye = booleans.subtract(
      primitives.cylinder({ radius: 6, height: 4, segments: 32, center: [0, outer + 3, height / 2] }),
      primitives.cylinder({ radius: 3, height: 5, segments: 32, center: [0, outer + 3, height / 2] }),
    );
    const joined = fromGeom3(booleans.union(toGeom3(ring), eye));
    expectSound(joined);
    expect(volumeOf(joined)).toBeGreaterThan(volumeOf(ring) + 100);
    expect(volumeOf(joined)).toBeCloseTo(kernelBoolean('union', ring, fromGeom3(eye)), 0);
  });

  test('names what is open', () => {
    const solid = primitives.cuboid({ size: [2, 2, 2] });
    const open = { ...solid, polygons: solid.polygons.slice(1) };
    expect(() => fromGeom3(open)).toThrow(Refusal);
    expect(() => fromGeom3(open)).toThrow(
      /4 edges have a face on one side only; one runs from \(-1, -1, 1\) to \(-1, -1, -1\) mm/,
    );
  });

  test('refuses solids that touch along an edge only', () => {
    const polygons = [box([0, 0, 0], [1, 1, 1]), box([1, 1, 0], [2, 2, 1])].flatMap(
      (mesh) => toGeom3(mesh).polygons,
    );
    expect(() => fromGeom3(geometries.geom3.create(polygons))).toThrow(
      /2 edges are shared by more than two faces/,
    );
  });

  test.each<[string, () => Geom3, RegExp]>([
    ['an empty solid', () => geometries.geom3.create(), /at least 4 polygons/],
    ['a solid inside out', () => geometries.geom3.invert(primitives.cube()), /inside out/],
    [
      'a coordinate that is no number',
      () => transforms.scale([1, 1, Number.NaN], primitives.cube()),
      /finite/,
    ],
  ])('refuses %s', (_, make, says) => {
    expect(() => fromGeom3(make())).toThrow(Refusal);
    expect(() => fromGeom3(make())).toThrow(says);
  });
});

/** Least height of every triangle, mm. */
function heights(mesh: Mesh): number[] {
  const corners = cornersOf(mesh);
  return Array.from({ length: corners.length / 3 }, (_, t) => {
    const [a, b, c] = corners.slice(3 * t, 3 * t + 3);
    const side = (p: number[], q: number[]) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
    const [x, y, z] = [side(a, b), side(b, c), side(c, a)];
    const half = (x + y + z) / 2;
    const area = Math.sqrt(half * (half - x) * (half - y) * (half - z));
    return (2 * area) / Math.max(x, y, z);
  });
}

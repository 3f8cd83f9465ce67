import fc from 'fast-check';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { edgeDefects } from '../../../lib/proof/mesh/edges.js';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { meshVolume } from '../../../lib/proof/mesh/volume.js';
import { stackMesh } from '../../../lib/solid/stack/stackMesh.js';
import {
  atHeight,
  type Contour,
  circlePoints,
  contourAt,
  placedPoints,
  polygonPoints,
  signedArea,
} from '../../../lib/stack/contour.js';
import { roomProblems } from '../../../lib/stack/room.js';
import type { Face, Stack, Wall } from '../../../lib/stack/stack.js';
import { kernelBody, startKernel } from '../../outside/kernel.js';
import { fuzz, uniform } from '../../proof/mesh/fuzz.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const area = ({ points }: Contour) => signedArea(points);

/** A plate of height 4 with holes, pits and pins of any outline at places of a grid, and what its volume must be. */
function plate(
  pieces: readonly { kind: 'hole' | 'pit' | 'pin'; sides: number; size: number; turn: number }[],
) {
  const side = 10 * Math.ceil(Math.sqrt(pieces.length));
  const corners = contourAt(
    [
      [0, 0],
      [side / 2, 0],
      [side, 0],
      [side, side],
      [0, side],
    ],
    0,
  );
  const top = atHeight(corners, 4);
  const walls: Wall[] = [{ from: corners, to: top, solid: 'inside' }];
  const [below, above]: [Contour[], Contour[]] = [[], []];
  const faces: Face[] = [
    { looks: 'down', outer: corners, holes: below },
    { looks: 'up', outer: top, holes: above },
  ];
  let volume = 4 * area(corners);
  pieces.forEach(({ kind, sides, size, turn }, i) => {
    const columns = side / 10;
    const centre: [number, number] = [5 + 10 * (i % columns), 5 + 10 * Math.floor(i / columns)];
    const outline = placedPoints(polygonPoints(sides, size), turn, centre);
    const start = contourAt(outline, 4);
    above.push(start);
    if (kind === 'hole') {
      const end = atHeight(start, 0);
      below.push(end);
      walls.push({ from: start, to: end, solid: 'outside' });
      volume -= 4 * area(start);
    } else {
      const end = atHeight(start, kind === 'pin' ? 7 : 1.5);
      const solid = kind === 'pin' ? 'inside' : 'outside';
      walls.push({ from: start, to: end, solid });
      faces.push({ looks: 'up', outer: end, holes: [] });
      volume += (kind === 'pin' ? 3 : -2.5) * area(start);
    }
  });
  return { stack: { walls, faces }, volume };
}

function expectSound(stack: Stack, volume: number, accuracy: number): void {
  const mesh = stackMesh(stack);
  expect(edgeDefects(mesh)).toMatchObject({ watertight: true, duplicateVertices: 0, unusedVertices: 0 });
  expect(selfIntersections(mesh)).toEqual([]);
  expect(Math.abs(meshVolume(mesh) / volume - 1)).toBeLessThan(accuracy);
  const body = kernelBody(kernel, mesh);
  expect(body.status()).toBe('NoError');
  expect(body.numTri()).toBe(mesh.triangles.length / 3);
  expect(Math.abs(body.volume() / volume - 1)).toBeLessThan(1e-5);
  body.delete();
}

describe('a stack of faces and walls', () => {
  it('of any holes, pits and pins is closed, sound for manifold-3d too, and has the volume of its prisms', () => {
    const piece = fc.record({
      kind: fc.constantFrom('hole' as const, 'pit' as const, 'pin' as const),
      sides: fc.integer({ min: 3, max: 40 }),
      size: uniform(0.5, 4),
      // Straight rows of equal polygons are the hard case for filling: their corners line up.
      turn: fc.oneof(fc.constant(0), uniform(0, 6)),
    });
    fuzz(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 20 }), (pieces) => {
        const { stack, volume } = plate(pieces);
        expectSound(stack, volume, 1e-12);
      }),
      40,
    );
  });

  // Volume of a frustum h (A + a + √(A a)) / 3.
  it('joins a cone of equal counts, and a hexagon to a circle', () => {
    const wide = contourAt(circlePoints(6, 0, [0, 0], 48), 0);
    const narrow = contourAt(circlePoints(3, 0, [0, 0], 48), 3);
    const [a, b] = [area(wide), area(narrow)];
    const ends: Face[] = [
      { looks: 'down', outer: wide, holes: [] },
      { looks: 'up', outer: narrow, holes: [] },
    ];
    expectSound(
      { walls: [{ from: narrow, to: wide, solid: 'inside' }], faces: ends },
      a + b + Math.sqrt(a * b),
      1e-12,
    );

    const nut = contourAt(polygonPoints(6, 10), 0);
    const hole = contourAt(circlePoints(2, 0, [0, 0], 60), 4);
    const stack: Stack = {
      walls: [{ from: nut, to: hole, solid: 'inside' }],
      faces: [
        { looks: 'down', outer: nut, holes: [] },
        { looks: 'up', outer: hole, holes: [] },
      ],
    };
    // Both outlines are convex and share an axis of symmetry six times over: the body is their convex hull.
    const hull = kernel.Manifold.hull(
      [nut, hole].flatMap(({ points, z }) => points.map(([x, y]): [number, number, number] => [x, y, z])),
    );
    expectSound(stack, hull.volume(), 1e-6);
    hull.delete();
  });

  it('names what does not close', () => {
    const bottom = contourAt(polygonPoints(4, 2), 0);
    const top = atHeight(bottom, 1);
    const wall: Wall = { from: bottom, to: top, solid: 'inside' };
    const floor: Face = { looks: 'down', outer: bottom, holes: [] };
    expect(() => stackMesh({ walls: [wall], faces: [floor] })).toThrow('z = 1 bounds 1 surfaces');
    const lid: Face = { looks: 'up', outer: top, holes: [contourAt(polygonPoints(4, 2), 1)] };
    expect(() => stackMesh({ walls: [wall], faces: [floor, lid] })).toThrow();
  });
});

describe('room in a face', () => {
  const outer = contourAt(polygonPoints(4, 20), 0);
  const hole = (x: number, radius: number) => contourAt(circlePoints(radius, 0, [x, 0], 360), 0);
  // Distances of circles from each other and from a flat at 10 mm.
  it('is the wall between holes, and between a hole and the edge', () => {
    expect(roomProblems(outer, [hole(-4, 2), hole(4, 2)], 3.9)).toEqual([]);
    const [near] = roomProblems(outer, [hole(-4, 2), hole(4, 2)], 4.2);
    expect(near).toMatchObject({ hole: 0, other: 'outer' });
    const found = roomProblems(outer, [hole(-2, 2), hole(3, 2)], 1.5);
    expect(found).toEqual([{ hole: 1, other: 0, room: expect.closeTo(1, 3) }]);
  });
  it('is below 0 where holes overlap, one holds the other, or one leaves the face', () => {
    expect(roomProblems(outer, [hole(0, 5), hole(1, 2)], 0.5)).toMatchObject([{ room: -0.5 }]);
    expect(roomProblems(outer, [hole(0, 2), hole(3, 2)], 0.5)).toMatchObject([{ hole: 1, other: 0 }]);
    expect(roomProblems(outer, [hole(9, 2)], 0.5)[0].room).toBeLessThanOrEqual(0);
    expect(roomProblems(outer, [hole(20, 2)], 0.5)).toMatchObject([{ other: 'outer', room: -0.5 }]);
  });
});

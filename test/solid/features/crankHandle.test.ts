import type { Manifold, ManifoldToplevel, SimplePolygon } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { meshBounds, meshVolume } from '../../../lib/proof/mesh/volume.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Part } from '../../../lib/solid/mesh.js';
import { kernelBody, startKernel } from '../../outside/kernel.js';
import { referenceSet } from '../../sets.js';
import { pairOf } from '../../trains.js';

/** The handle's body, and its outlines cut by manifold-3d at a height, the largest first, with area and centre. */
let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

function cut(body: Manifold, height: number) {
  return body
    .slice(height)
    .toPolygons()
    .map(measured)
    .sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
}

function measured(points: SimplePolygon) {
  let [area, x, y] = [0, 0, 0];
  points.forEach(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length];
    const cross = (ax * by - bx * ay) / 2;
    area += cross;
    x += (cross * (ax + bx)) / 3;
    y += (cross * (ay + by)) / 3;
  });
  return { area, x: x / area, y: y / area };
}

const crank = { acrossFlats: 8, depth: 6, handle: 50 };
const pair = (more: object = {}, socket: object = {}) =>
  buildSet(
    pairOf(24, 30, { pinion: { teeth: 24, crank: { ...crank, ...socket } }, tolerance: 0.005, ...more }),
  );
const handleOf = (parts: readonly Part[]) =>
  parts.find(({ name }) => name === 'crank-handle')!.mesh;

describe('a crank handle', () => {
  it('reaches from axis to axis as far as asked, a hole for an M5 axle at its far end', () => {
    const body = kernelBody(kernel, handleOf(pair()));
    const [, hole] = cut(body, 2.5);
    const [peg] = cut(body, 8);
    expect(Math.hypot(hole.x - peg.x, hole.y - peg.y)).toBeCloseTo(50, 3);
    // ISO 273: a medium clearance hole for M5 is 5.5 mm.
    expect(-hole.area / (Math.PI * 2.75 ** 2)).toBeCloseTo(1, 2);
  });

  it.each([
    ['square', 64, 8 / Math.SQRT2],
    ['hexagon', (Math.sqrt(3) / 2) * 64, 8 / Math.sqrt(3)],
  ])(
    'has a %s peg that ends half a millimetre over the pit’s floor, and 3 mm around it',
    (shape, area, corner) => {
      const mesh = handleOf(pair({}, { shape }));
      const [peg] = cut(kernelBody(kernel, mesh), 8);
      expect(peg.area / area).toBeCloseTo(1, 5);
      const { min, max } = meshBounds(mesh);
      expect(max[2] - min[2]).toBeCloseTo(5 + 6 - 0.5, 9);
      const radius = corner + 3;
      expect(max[0] - min[0]).toBeCloseTo(50 + 2 * radius, 9);
      expect(max[1] - min[1]).toBeCloseTo(2 * radius, 9);
      const arm = Math.PI * radius ** 2 + 50 * 2 * radius - Math.PI * 2.75 ** 2;
      expect(meshVolume(mesh) / (5 * arm + 5.5 * area)).toBeCloseTo(1, 3);
    },
  );

  it('lies beside the set on the bed, touching nothing', () => {
    for (const parts of [pair(), buildSet(referenceSet({ sun: { teeth: 15, crank } }))]) {
      const handle = meshBounds(handleOf(parts));
      expect(handle.min[2]).toBe(0);
      for (const { name, mesh } of parts)
        if (name !== 'crank-handle') expect(handle.max[1], name).toBeLessThan(meshBounds(mesh).min[1]);
    }
  });

  it('comes out as long as asked from a print that shrinks, its peg that much smaller than its pit', () => {
    const body = kernelBody(kernel, handleOf(pair({ filament: { shrinkage: 2 }, printer: { growth: 0.1 } })));
    const [, hole] = cut(body, 2.5);
    const [peg] = cut(body, 8);
    expect(0.98 * Math.hypot(hole.x - peg.x, hole.y - peg.y)).toBeCloseTo(50, 3);
    expect(0.98 * Math.sqrt((2 / Math.sqrt(3)) * peg.area) + 2 * 0.1).toBeCloseTo(8, 4);
  });
});

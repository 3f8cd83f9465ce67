import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { meshBounds, meshVolume } from '../../../lib/proof/mesh/volume.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Mesh, Part } from '../../../lib/solid/mesh.js';
import { loopsAt, type MeasuredLoop, startKernel } from '../../outside/kernel.js';
import { referenceSet } from '../../sets.js';
import { pairOf } from '../../trains.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const crank = { acrossFlats: 8, depth: 6, handle: 50 };
const pair = (more: object = {}, socket: object = {}) =>
  buildSet(
    pairOf(24, 30, { pinion: { teeth: 24, crank: { ...crank, ...socket } }, tolerance: 0.005, ...more }),
  );
const handleOf = (parts: readonly Part[]) => parts.find(({ name }) => name === 'crank-handle')!.mesh;

/** The axle's hole in the arm, and the peg over it. */
const holeAndPeg = (mesh: Mesh) => [loopsAt(kernel, mesh, 2.5)[1], loopsAt(kernel, mesh, 8)[0]];
const distance = (a: MeasuredLoop, b: MeasuredLoop) =>
  Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);

describe('a crank handle', () => {
  it('reaches from axis to axis as far as asked, a hole for an M5 axle at its far end', () => {
    const [hole, peg] = holeAndPeg(handleOf(pair()));
    expect(distance(hole, peg)).toBeCloseTo(50, 3);
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
      const [, peg] = holeAndPeg(mesh);
      expect(peg.area / area).toBeCloseTo(1, 5);
      const { min, max } = meshBounds(mesh);
      // A shoulder holds the arm off the gear by the gap at least: on it, the peg reaches 5.5 mm into a pit of 6.
      const standOff = max[2] - min[2] - (5 + 6 - 0.5);
      expect(standOff).toBeGreaterThan(0.25 - 1e-9);
      expect(standOff).toBeLessThan(1);
      const [shoulder] = loopsAt(kernel, mesh, 5 + standOff / 2);
      expect(shoulder.least).toBeGreaterThan(corner);
      expect(loopsAt(kernel, mesh, 5 + standOff + 0.001)[0].area / area).toBeCloseTo(1, 5);
      const radius = corner + 3;
      expect(max[0] - min[0]).toBeCloseTo(50 + 2 * radius, 9);
      expect(max[1] - min[1]).toBeCloseTo(2 * radius, 9);
      const arm = Math.PI * radius ** 2 + 50 * 2 * radius - Math.PI * 2.75 ** 2;
      expect(shoulder.most).toBeLessThan(radius);
      expect(meshVolume(mesh) / (5 * arm + standOff * shoulder.area + 5.5 * area)).toBeCloseTo(1, 3);
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
    const [hole, peg] = holeAndPeg(handleOf(pair({ filament: { shrinkage: 2 }, printer: { growth: 0.1 } })));
    expect(0.98 * distance(hole, peg)).toBeCloseTo(50, 3);
    expect(0.98 * Math.sqrt((2 / Math.sqrt(3)) * peg.area) + 2 * 0.1).toBeCloseTo(8, 4);
  });
});

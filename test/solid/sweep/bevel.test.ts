import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { loopsAt, startKernel } from '../../outside/kernel.js';
import { setOf } from '../../sets.js';
import { gearOf } from '../../trains.js';

/**
 * Bevels and lips are cones: on a bevel of size s at an angle φ from the end face the tips stand s − z / tan φ back at height z,
 * seen by the general-purpose kernel manifold-3d. Every angle but 45° tells tan from its inverse.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const outermost = (mesh: Mesh, z: number) => loopsAt(kernel, mesh, z)[0].most;
const TIP = 1e-3;

describe.each(['spur', 'helical', 'herringbone'])('on %s teeth', (form) => {
  it.each([
    [60, 0.9],
    [50, 1.2],
    [35, 0.8],
  ])('a bevel at %d° is %f mm deep in the end faces, and as high as its tangent says', (angle, size) => {
    const spec = gearOf({ teeth: 24 }, { helix: { form }, bevel: { size, angle }, tolerance: 0.002 });
    const { mesh } = buildSet(spec)[0];
    const tan = Math.tan((angle * Math.PI) / 180);
    const tip = outermost(mesh, 6);
    for (const share of [0.05, 0.3, 0.6, 0.95]) {
      const back = size * (1 - share);
      expect(Math.abs(tip - outermost(mesh, share * size * tan) - back)).toBeLessThan(2 * TIP);
      expect(Math.abs(tip - outermost(mesh, 12 - share * size * tan) - back)).toBeLessThan(2 * TIP);
    }
    expect(Math.abs(tip - outermost(mesh, 1.05 * size * tan))).toBeLessThan(2 * TIP);
    expect(selfIntersections(mesh)).toEqual([]);
  });
});

it.each([35, 45, 55])(
  'lips of a ring are cones at %d° that fill its tooth spaces towards both end faces',
  (angle) => {
    const spec = setOf(15, 15, 45, 3, {
      ...{ module: 2, faceWidth: 20, helix: { form: 'spur' }, retention: 'lips', tolerance: 0.01 },
      ...{ lips: { on: 'ring', gap: 0.3 }, bevel: { angle, size: 1.6 }, limits: { overhangAngle: 60 } },
    });
    const parts = buildSet(spec);
    const ring = parts.find(({ name }) => name === 'ring')!.mesh;
    // The lips fill the tooth spaces from the roots inwards: in the end faces the opening reaches less far out.
    const opening = (z: number) => loopsAt(kernel, ring, z)[1].most;
    const tan = Math.tan((angle * Math.PI) / 180);
    const least = opening(1e-4);
    expect(opening(10) - least).toBeGreaterThan(0.3);
    for (const share of [0.2, 0.5, 0.8]) {
      const out = share * (opening(10) - least);
      expect(Math.abs(opening(out * tan) - least - out)).toBeLessThan(0.03);
      expect(Math.abs(opening(20 - out * tan) - least - out)).toBeLessThan(0.03);
    }
  },
);

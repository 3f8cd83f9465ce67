import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const teeth = [
  [15, 15, 45, 5],
  [18, 18, 54, 4],
  [30, 15, 60, 6],
  [12, 24, 60, 3],
] as const;

// Measured by manifold-3d. With vertices on the exact surfaces every one of these was below zero, by 0.15 to 0.66 tolerances.
it('measured gaps of ring meshes err to neither side', () => {
  const errors: number[] = [];
  for (const [sun, planets, ring, count] of teeth)
    for (const [module, tolerance, angle] of [
      [0.8, 0.01, 0],
      [1.5, 0.03, 20],
      [3, 0.01, 35],
    ] as const) {
      const form = angle === 0 ? 'spur' : 'herringbone';
      const spec = setOf(sun, planets, ring, count, {
        module,
        tolerance,
        faceWidth: 6 * module,
        helix: { form, angle },
        fit: { gap: 0.2 },
      });
      const parts = buildSet(spec);
      const body = (name: string) => kernelBody(kernel, parts.find((part) => part.name === name)!.mesh);
      const error = (body('ring').minGap(body('planet-1'), 1) - 0.2) / tolerance;
      expect(Math.abs(error), `${sun}/${planets}/${ring} ${module} ${angle}`).toBeLessThan(0.4);
      errors.push(error);
    }
  const mean = errors.reduce((a, b) => a + b) / errors.length;
  expect(Math.abs(mean)).toBeLessThan(0.1);
  expect(errors.filter((error) => error > 0).length).toBeGreaterThanOrEqual(3);
  expect(errors.filter((error) => error < 0).length).toBeGreaterThanOrEqual(3);
});

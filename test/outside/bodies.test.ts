import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/**
 * Every body against the general-purpose kernel manifold-3d: accepted without error, of positive volume and the
 * expected genus, and as far from its neighbours as was asked. The library measures gaps with code of its own.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const helix = (form: string, angle: number) => ({ helix: { form, angle } });
const sets: [string, PlanetarySpec][] = [
  ['15/15/45 × 5, herringbone 30°', setOf(15, 15, 45, 5)],
  ['15/15/45 × 5, spur', setOf(15, 15, 45, 5, helix('spur', 0))],
  [
    '15/15/45 × 5, left herringbone 15°, undercut',
    setOf(15, 15, 45, 5, { helix: { form: 'herringbone', angle: 15, hand: 'left' } }),
  ],
  [
    '18/18/54 × 4, helical 15°, module 0.8',
    setOf(18, 18, 54, 4, { ...helix('helical', 15), module: 0.8, fit: { gap: 0.1 } }),
  ],
  ['18/18/54 × 4, all the gap from sun and ring', setOf(18, 18, 54, 4, { fit: { gap: 0.3, gapShare: 1 } })],
  ['30/15/60 × 6, herringbone 45°', setOf(30, 15, 60, 6, helix('herringbone', 45))],
  [
    '12/24/60 × 3, spur, undercut sun, module 3',
    setOf(12, 24, 60, 3, { ...helix('spur', 0), module: 3, fit: { gap: 0.5 } }),
  ],
  [
    '12/24/60 × 3, helical 45°, no bevel',
    setOf(12, 24, 60, 3, { ...helix('helical', 45), bevel: { size: 0 } }),
  ],
  [
    '12/24/60 × 3, shifted sun',
    setOf(12, 24, 60, 3, { ...helix('spur', 0), sun: { teeth: 12, profileShift: 0.3 } }),
  ],
  ['15/15/45 × 5, tolerance 0.002, gap 0.1', setOf(15, 15, 45, 5, { tolerance: 0.002, fit: { gap: 0.1 } })],
  ['12/24/60 × 3, spur, tolerance 0.002', setOf(12, 24, 60, 3, { ...helix('spur', 0), tolerance: 0.002 })],
];

describe.each(sets)('%s', (_, spec) => {
  it('is made of sound bodies that keep the gap', () => {
    const parts = buildSet(spec);
    const bodies = parts.map(({ mesh }) => kernelBody(kernel, mesh));
    bodies.forEach((body, i) => {
      expect(body.status(), parts[i].name).toBe('NoError');
      expect(body.volume(), parts[i].name).toBeGreaterThan(0);
      expect(body.numTri(), parts[i].name).toBe(parts[i].mesh.triangles.length / 3);
      expect(body.genus(), parts[i].name).toBe(parts[i].name === 'ring' ? 1 : 0);
    });
    const { gap } = spec.fit;
    const allowed = Math.max(0.03 * gap, spec.tolerance);
    const ring = bodies.length - 1;
    for (let i = 1; i < ring; i++) {
      for (const mate of [0, ring]) {
        const measured = bodies[mate].minGap(bodies[i], 3 * gap);
        expect(
          Math.abs(measured - gap),
          `${parts[mate].name} to ${parts[i].name}: ${measured}`,
        ).toBeLessThanOrEqual(allowed);
      }
      const next = 1 + (i % (ring - 1));
      expect(bodies[i].minGap(bodies[next], 3 * gap)).toBeGreaterThanOrEqual(gap);
    }
    for (const body of bodies) body.delete();
  });
});

import fc from 'fast-check';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { meshBounds } from '../../lib/proof/mesh/volume.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Part } from '../../lib/solid/mesh.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { evenly } from '../evenly.js';
import { referenceSet, setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/**
 * Compensation as a print would undo it, measured by the general-purpose kernel manifold-3d on the meshes: drawn gaps
 * are the asked one and twice the growth, and what shrinks comes out as asked.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

/** Least distances between the first planet and its mates, mm. */
function gapsOf(parts: readonly Part[]): number[] {
  const body = (name: string) => kernelBody(kernel, parts.find((part) => part.name === name)!.mesh);
  const [sun, planet, ring] = ['sun', 'planet-1', 'ring'].map(body);
  const gaps = [sun, ring].map((mate) => mate.minGap(planet, 3));
  for (const each of [sun, planet, ring]) each.delete();
  return gaps;
}

/** Distances of a body's vertices from the axis of the set, mm. */
const radiiOf = ({ mesh }: Part) =>
  Array.from({ length: mesh.positions.length / 3 }, (_, i) =>
    Math.hypot(mesh.positions[3 * i], mesh.positions[3 * i + 1]),
  );
const outer = (parts: Part[]) => radiiOf(parts[parts.length - 1]).reduce((a, b) => Math.max(a, b));
const inner = (parts: Part[]) => radiiOf(parts[0]).reduce((a, b) => Math.min(a, b));

/** Larger than the allowed 3 % only where the mesh tolerance is more. */
function expectGaps(spec: PlanetarySpec, drawn: number) {
  for (const gap of gapsOf(buildSet(spec)))
    expect(Math.abs(gap - drawn)).toBeLessThanOrEqual(Math.max(0.03 * drawn, spec.tolerance));
}

describe('growth', () => {
  it.each([0.05, 0.1, 0.2, -0.05])('of %f mm is drawn back on both sides of every gap', (growth) => {
    expectGaps(referenceSet({ printer: { growth }, tolerance: 0.005 }), 0.25 + 2 * growth);
  });

  it.each([0.08, -0.06])('of %f mm leaves shares, shifts, undercut and other racks alone', (growth) => {
    const printer = { growth };
    const spur = { helix: { form: 'spur' } };
    for (const more of [
      { ...spur, fit: { gap: 0.3, gapShare: 1 } },
      { ...spur, fit: { gap: 0.3, gapShare: 0 } },
      { ...spur, fit: { gap: 0.3 }, rack: { addendum: 1, dedendum: 1.25, fillet: 0 } },
      { fit: { gap: 0.3 }, sun: { teeth: 12, profileShift: 0.3 } },
    ])
      expectGaps(setOf(12, 24, 60, 3, { ...more, printer, tolerance: 0.005 }), 0.3 + 2 * growth);
  });

  it('moves every other wall by its own amount', () => {
    const growth = 0.1;
    const bore = { shape: 'hexagon', acrossFlats: 6.6 };
    const make = (printer: object) => buildSet(referenceSet({ sun: { teeth: 15, bore }, printer }));
    const [asked, drawn] = [make({}), make({ growth })];
    expect(outer(asked) - outer(drawn)).toBeCloseTo(growth, 9);
    // Corners of the bore: half across flats over cos 30°.
    expect(inner(drawn)).toBeCloseTo((6.6 / 2 + growth) / Math.cos(Math.PI / 6), 9);
    expect(inner(asked)).toBeCloseTo(6.6 / 2 / Math.cos(Math.PI / 6), 9);
    for (const [i, { name, mesh }] of drawn.entries()) {
      expect(mesh.positions.some((value, at) => at % 3 === 2 && value > 20)).toBe(false);
      const [was, is] = [asked[i].mesh, mesh].map((each) => meshBounds(each).max[2]);
      expect([name, is]).toEqual([name, was]);
    }
  });
});

describe('shrinkage', () => {
  it.each([0.2, 1, 2.5])('of %f percent makes the drawn set larger by what it takes', (shrinkage) => {
    const asked = buildSet(referenceSet());
    const drawn = buildSet(referenceSet({ filament: { shrinkage } }));
    const left = 1 - shrinkage / 100;
    for (const [i, { mesh }] of drawn.entries()) {
      const [was, is] = [asked[i].mesh, mesh].map((each) => meshBounds(each));
      for (const axis of [0, 1, 2]) {
        // The meshes are cut up anew, each within its tolerance of its own surface.
        expect(Math.abs(is.max[axis] * left - was.max[axis])).toBeLessThan(0.02);
        expect(Math.abs(is.min[axis] * left - was.min[axis])).toBeLessThan(0.02);
      }
      expect(is.max[2] * left).toBeCloseTo(20, 9);
    }
    expect(outer(drawn) * left).toBeCloseTo(outer(asked), 9);
    expectGaps(referenceSet({ filament: { shrinkage } }), 0.25 / left);
  });
});

describe('both together', () => {
  it('come out as asked over random sets', () => {
    fc.assert(
      fc.property(
        fc.constantFrom([15, 15, 45, 5], [18, 18, 54, 4], [12, 24, 60, 3], [30, 15, 60, 6]),
        fc.constantFrom('spur', 'helical', 'herringbone'),
        evenly(1.5, 2.5),
        evenly(0.15, 0.35),
        evenly(-0.05, 0.12),
        evenly(0, 1.5),
        ([sun, planet, ring, count], form, module, gap, growth, shrinkage) => {
          const spec = setOf(sun, planet, ring, count, {
            module,
            helix: { form },
            fit: { gap },
            printer: { growth },
            filament: { shrinkage },
          });
          expectGaps(spec, (gap + 2 * growth) / (1 - shrinkage / 100));
        },
      ),
      { numRuns: 8 },
    );
  });
});

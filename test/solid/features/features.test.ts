import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { edgeDefects } from '../../../lib/proof/mesh/edges.js';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { overhangOf } from '../../../lib/proof/printing/overhang.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { kernelBody, startKernel } from '../../outside/kernel.js';
import { setOf } from '../../sets.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

/** Sets with their features, and the genus that each part must have: its through holes, and one for a ring. */
const sets: [string, object, Record<string, number>][] = [
  [
    'screw with countersink below, nut above',
    { sun: { screw: { size: 'M4', countersink: 'bottom' }, nut: { size: 'M4' } } },
    { sun: 1 },
  ],
  [
    'nut below, under a knob',
    { sun: { nut: { size: 'M3', at: 'bottom' }, knob: { diameter: 14, height: 9 } } },
    { sun: 1 },
  ],
  [
    'crank socket and handle, dimples, scallops',
    {
      sun: { crank: { acrossFlats: 8, depth: 8, handle: 40 } },
      planets: { dimple: { diameter: 12, depth: 2.5 } },
      ring: { grip: { count: 24, depth: 1.5 } },
    },
    { sun: 0, 'planet-1': 0, ring: 1, 'crank-handle': 1 },
  ],
  [
    'mount, pockets with holes, text on a knob',
    {
      name: 'spin',
      sun: {
        knob: { diameter: 15, height: 8, grips: 6 },
        text: { content: 'go', size: 4.5, style: 'raised' },
      },
      planets: { pocket: { diameter: 14, depth: 3 }, hole: { diameter: 8 } },
      ring: { rim: 6, mount: { hole: 98, panel: 12 }, text: { content: 'gap {gap} B8 {name}', size: 3 } },
    },
    { sun: 0, 'planet-1': 1, ring: 7, 'clamp-ring': 7 },
  ],
  [
    'flange above, bolts through the rim, left hand',
    {
      helix: { form: 'helical', angle: 15, hand: 'left' },
      sun: { bore: { shape: 'hexagon', acrossFlats: 6.6 }, text: { content: 'm{module}', size: 3 } },
      planets: { hole: { diameter: 8 }, text: { content: '@&%', size: 3, style: 'raised' } },
      ring: {
        rim: 8,
        flange: { diameter: 110, thickness: 3, at: 'top' },
        bolts: { circle: 83, count: 8, size: 'M3' },
        text: { content: 'past every bolt hole, all the way around the ring', size: 4 },
      },
    },
    { sun: 1, 'planet-1': 1, ring: 9 },
  ],
  [
    'bolts through a flange below, scallops above it',
    {
      ring: {
        rim: 7,
        grip: { count: 30, depth: 1 },
        flange: { diameter: 120, thickness: 4 },
        bolts: { circle: 110, count: 5, size: 'M5', series: 'coarse' },
      },
    },
    { ring: 6 },
  ],
];

describe.each(sets)('%s', (_, more, genus) => {
  it('are closed, clean, sound for manifold-3d and print without support', () => {
    const own = more as Record<string, object>;
    const spec = setOf(15, 15, 45, 5, {
      ...own,
      sun: { teeth: 15, ...own.sun },
      planets: { teeth: 15, count: 5, ...own.planets },
    });
    const parts = buildSet(spec);
    for (const { name, mesh } of parts) {
      if (/planet-[2-9]/.test(name)) continue;
      const edges = edgeDefects(mesh);
      expect(edges, name).toMatchObject({
        watertight: true,
        shells: 1,
        duplicateVertices: 0,
        unusedVertices: 0,
      });
      if (name in genus) expect(edges.genus, name).toBe(genus[name]);
      expect(selfIntersections(mesh), name).toEqual([]);
      const { area, at } = overhangOf(mesh, {
        angle: 45,
        above: spec.printer.layer,
        tolerance: spec.tolerance,
      });
      expect(area, `${name} at ${at}`).toBe(0);
      const body = kernelBody(kernel, mesh);
      expect(body.status(), name).toBe('NoError');
      expect(body.numTri(), name).toBe(mesh.triangles.length / 3);
      body.delete();
    }
    expect(parts.map(({ name }) => name)).toEqual(expect.arrayContaining(Object.keys(genus)));
  });
});

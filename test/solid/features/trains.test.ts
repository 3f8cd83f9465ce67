// Features of the gears of pairs, racks and single gears, and what scripts add to them.

import { primitives } from '@jscad/modeling';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { edgeDefects } from '../../../lib/proof/mesh/edges.js';
import { selfIntersections } from '../../../lib/proof/mesh/selfIntersection.js';
import { proveSet } from '../../../lib/proof/proveSet.js';
import type { Sheet } from '../../../lib/proof/sheetTypes.js';
import { Refusal } from '../../../lib/refusal.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Part } from '../../../lib/solid/mesh.js';
import type { TrainSpec } from '../../../lib/spec/types.js';
import { kernelBody, startKernel } from '../../outside/kernel.js';
import { gearOf, pairOf, rackOf } from '../../trains.js';

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const coarse = { tolerance: 0.05 };
const top = ({ mesh }: Part) =>
  mesh.positions.reduce((most, v, i) => (i % 3 === 2 && v > most ? v : most), 0);
const failing = ({ checks }: Sheet) => checks.filter(({ level, holds }) => level !== 'note' && !holds);

/** Files with the genus that each part must have: its through holes, and one for a ring. */
const files: [string, TrainSpec, Record<string, number>][] = [
  [
    'a rack’s pinion with a knob, its bore through it, text around',
    rackOf(24, 8, {
      ...coarse,
      pinion: {
        teeth: 24,
        bore: { shape: 'round', diameter: 5 },
        knob: { diameter: 16, height: 9 },
        text: { content: 'm', size: 3 },
      },
    }),
    { pinion: 1, bar: 0 },
  ],
  [
    'a pair with crank and handle, screw and nut, left hand',
    pairOf(20, 26, {
      ...coarse,
      helix: { form: 'helical', hand: 'left' },
      pinion: { teeth: 20, crank: { acrossFlats: 8, depth: 7, handle: 40 } },
      wheel: {
        teeth: 26,
        screw: { size: 'M4', countersink: 'top' },
        nut: { size: 'M4', at: 'bottom' },
        text: { content: 'gap {gap}', size: 4 },
      },
    }),
    { pinion: 0, wheel: 1, 'crank-handle': 1 },
  ],
  [
    'a wheel with grip, flange and bolts around a pinion with a knob',
    pairOf(15, 45, {
      ...coarse,
      pinion: { teeth: 15, knob: { diameter: 12, height: 8, grips: 0 } },
      wheel: {
        internal: true,
        teeth: 45,
        rim: 8,
        grip: { count: 40, depth: 1 },
        flange: { diameter: 112, thickness: 4 },
        bolts: { circle: 105, count: 5, size: 'M3' },
        text: { content: '{name}', size: 3, style: 'raised' },
      },
    }),
    { pinion: 0, wheel: 6 },
  ],
  [
    'a gear with teeth inside and a flange above',
    gearOf(
      { internal: true, teeth: 40, rim: 6, flange: { diameter: 92, thickness: 2, at: 'top' } },
      { ...coarse, helix: { form: 'spur' } },
    ),
    { gear: 1 },
  ],
];

describe.each(files)('%s', (_, spec, genus) => {
  it('is proved, and sound for manifold-3d', () => {
    const { sheet, parts } = proveSet(spec);
    expect(failing(sheet)).toEqual([]);
    expect(parts.map(({ name }) => name)).toEqual(Object.keys(genus));
    for (const { name, mesh } of parts) {
      expect(edgeDefects(mesh), name).toMatchObject({ watertight: true, shells: 1, genus: genus[name] });
      const body = kernelBody(kernel, mesh);
      expect(body.status(), name).toBe('NoError');
      body.delete();
    }
  });
});

it('a knob stands on the pinion alone; sizes come out as asked after compensation', () => {
  const [, spec] = files[0];
  const printer = { ...spec.printer, growth: 0.05 };
  const { sheet, parts } = proveSet({ ...spec, printer });
  expect(parts.map(top)).toEqual([21, 12]);
  const size = (feature: string) => sheet.printing.sizes.find((one) => one.feature === feature);
  expect(size('knob')).toMatchObject({ part: 'pinion', drawn: 15.9, expected: 16 });
  // ISO 273: a medium clearance hole for M4 is 4.5 mm.
  const { printing } = proveSet(files[1][1]).sheet;
  expect(printing.sizes.find(({ feature }) => feature === 'screw hole')).toMatchObject({ expected: 4.5 });
});

it('letters on a knob stay inside its hollows', () => {
  const knob = { diameter: 38, height: 10, grips: 8 };
  const wide = (size: number) => gearOf({ teeth: 40, knob, text: { content: 'gap 0.25', size } }, coarse);
  const largest = refusalOf(() => buildSet(wide(8))).nearest[0] as number;
  const { mesh } = buildSet(wide(largest))[0];
  expect(edgeDefects(mesh)).toMatchObject({ watertight: true, shells: 1, genus: 0 });
  expect(selfIntersections(mesh)).toEqual([]);
});

function refusalOf(make: () => unknown): Refusal {
  try {
    make();
  } catch (error) {
    if (error instanceof Refusal) return error;
  }
  throw new Error('nothing was refused');
}

it('a label says the gap on the print, not the drawn one', () => {
  const label = (content: string, growth: number) =>
    buildSet(
      gearOf(
        { teeth: 30, text: { content, size: 5 } },
        { ...coarse, printer: { growth }, filament: { shrinkage: 0 } },
      ),
    )[0].mesh.positions;
  expect(label('{gap}', 0.05)).toEqual(label('0.25', 0.05));
});

describe('solids of a script', () => {
  const column = (radius: number, height: number, center: [number, number, number]) =>
    primitives.cylinder({ radius, height, center, segments: 32 });
  const area = (radius: number) => 16 * radius ** 2 * Math.sin(Math.PI / 16);

  it('are joined to and cut from the gears of a pair, where they lie', async () => {
    const spec = pairOf(17, 30, coarse);
    const { sheet: before } = proveSet(spec);
    const x = before.meshes[0].centreDistance;
    const { sheet } = await proveSet(spec, {
      join: { wheel: column(4, 6, [x, 0, 14]) },
      cut: { pinion: column(3, 40, [0, 0, 0]) },
    });
    expect(failing(sheet)).toEqual([]);
    const [pinion, wheel] = sheet.parts.map(({ volume }, i) => volume - before.parts[i].volume);
    expect(pinion).toBeCloseTo(-12 * area(3), 3);
    expect(wheel).toBeCloseTo(5 * area(4), 3);
  });

  it('fail body-gap where they reach over a bar', async () => {
    const spec = rackOf(18, 6, coarse);
    const { sheet } = await proveSet(spec, { join: { pinion: column(16, 5, [0, 0, 14]) } });
    expect(failing(sheet).map(({ id }) => id)).toContain('body-gap');
    await expect(buildSet(spec, { cut: { planets: column(2, 40, [0, 0, 0]) } })).rejects.toThrow(
      /pinion.*bar/,
    );
  });
});

// What a script adds is proved like everything else.

import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { booleans, primitives, transforms } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { inspectSet, proveSet } from '../../lib/proof/proveSet.js';
import type { Sheet } from '../../lib/proof/sheetTypes.js';
import { makeSet } from '../../lib/write/makeSet.js';
import { setOf } from '../sets.js';

const spec = setOf(12, 12, 36, 4, {
  faceWidth: 6,
  tolerance: 0.03,
  sun: { teeth: 12, bore: { shape: 'round', diameter: 4 } },
});
const column = (radius: number, height: number, center: [number, number, number] = [0, 0, 0]) =>
  primitives.cylinder({ radius, height, center, segments: 24 });
const check = ({ checks }: Sheet, id: string) => checks.find((one) => one.id === id)!;
const plain = proveSet(spec);
const outer = plain.sheet.parts.find(({ name }) => name === 'ring')!.bounds.max[1];

describe('a set with a script’s solids', () => {
  test('has the same teeth and gaps as before, measured on what is made', async () => {
    const { sheet } = await proveSet(spec, {
      join: { ring: column(5, 3, [0, outer + 2, 1.5]), sun: transforms.translate([0, 0, 6.5], column(4, 2)) },
      cut: { planets: column(2.5, 20), sun: column(2, 40) },
    });
    for (const id of ['helix-accuracy', 'body-gap', 'watertight', 'self-intersection', 'bed'])
      expect(check(sheet, id)).toMatchObject({ id, holds: true });
    expect(check(sheet, 'helix-accuracy').value).toBeCloseTo(check(plain.sheet, 'helix-accuracy').value!, 9);
    expect(check(sheet, 'body-gap').value).toBeCloseTo(check(plain.sheet, 'body-gap').value!, 9);
    const [before, after] = [plain.sheet, sheet].map(({ parts }) => parts.map(({ volume }) => volume));
    expect(after[0]).not.toBeCloseTo(before[0], 0);
    expect(after[2]).toBeGreaterThan(before[2] + 50);
  });

  test('fails helix-accuracy where one cuts into teeth, by the area that is gone', async () => {
    // A groove 1 mm wide all around the sun's tips, at mid face.
    const groove = column(30, 1, [0, 0, 3]);
    const core = column(7.2, 2, [0, 0, 3]);
    const { sheet } = await proveSet(spec, { cut: { sun: booleans.subtract(groove, core) } });
    expect(check(sheet, 'helix-accuracy')).toMatchObject({ holds: false, level: 'must' });
    expect(check(sheet, 'helix-accuracy').says).toMatch(/mm² of teeth cut away or covered on sun/);
    expect(check(sheet, 'watertight').holds).toBe(true);
  });

  test('fails body-gap where one fills a gap, and is not written', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'additions-'));
    const fill = column(1, 6, [0, outer - 8, 3]);
    const made = await makeSet(spec, { folder, join: { ring: fill } });
    expect(made.files).toEqual([]);
    expect(made.blocking.map(({ id }) => id)).toContain('body-gap');
    expect(check(made.sheet, 'body-gap').says).toMatch(/planet-2 and ring/);
    expect(await readdir(folder)).toEqual([]);
    await rm(folder, { recursive: true });
  });

  test('fails body-gap where parts that do not mesh come near each other', async () => {
    // An arm over the planets from the sun to the ring, each of which it clears by less than the gap.
    const arm = primitives.cuboid({ size: [2 * outer, 3, 2], center: [outer, 0, 7.1] });
    const mast = column(3, 3, [0, 0, 7]);
    const { sheet } = await proveSet(spec, { join: { sun: [mast, arm] } });
    expect(check(sheet, 'body-gap')).toMatchObject({ holds: false, level: 'must' });
    expect(sheet.meshes[1].gap.bodies).toBeCloseTo(plain.sheet.meshes[1].gap.bodies!, 9);
  });

  test('counts a planet that is changed alone as a kind of its own', async () => {
    const place = [0, plain.sheet.meshes[0].centreDistance, 0] as [number, number, number];
    const sheet = await inspectSet(spec, { cut: { 'planet-2': transforms.translate(place, column(2, 20)) } });
    const records = sheet.parts.map(({ name, count }) => [name, count]);
    expect(records).toEqual([
      ['sun', 1],
      ['planet', 3],
      ['planet-2', 1],
      ['ring', 1],
    ]);
    const [, planet, alone] = sheet.parts;
    // 12 r² sin(2π/24) h, a column of 24 sides.
    expect(planet.volume - alone.volume).toBeCloseTo(12 * 4 * Math.sin(Math.PI / 12) * 6, 6);
  });

  test('refuses an option that is misspelt', () => {
    expect(() => proveSet(spec, { joins: {} } as never)).toThrow(/joins: .*nearest that works: join/);
  });
});

// What a reader made by others finds in our files: lib3mf, the 3MF Consortium's own implementation, in its
// strict mode. Rules checked: 3MF Core Specification 1.2.4, sections 3.3, 3.4, 4.1 and 4.2.
import { describe, expect, test } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Part } from '../../lib/solid/mesh.js';
import { renderPicture } from '../../lib/write/picture.js';
import { encode3mf } from '../../lib/write/threemf.js';
import { ball, box, moved, twistedPrism, volumeOf } from '../write/meshes.js';
import { spinner } from '../write/sheets.js';
import { type Found, readThreemf } from './readThreemf.js';

/** Our parts against what was read: nothing lost, nothing turned, nothing moved beyond float32 rounding. */
function expectSame(parts: readonly Part[], found: Found): void {
  expect(found.warnings).toBe(0);
  expect(found.inMillimetres).toBe(true);
  expect(found.meshes.map(({ name }) => name)).toEqual(parts.map(({ name }) => name));
  const { stored } = found;
  found.meshes.forEach(({ mesh, manifoldAndOriented, valid, typeIsModel }, i) => {
    const ours = parts[i].mesh;
    expect([manifoldAndOriented, valid, typeIsModel]).toEqual([true, true, true]);
    expect(mesh.triangles).toEqual(ours.triangles);
    expect(mesh.positions.length).toBe(ours.positions.length);
    // Six decimals (half a nanometre) and then the reader's float32.
    const worst = ours.positions.reduce((most, value, k) => {
      // A copy is turned and moved by numbers that are float32 too.
      const rounding = stored === parts.length ? Math.abs(value) * 2 ** -24 : 64 * 2 ** -21;
      const off = Math.abs(mesh.positions[k] - value) - 0.5e-6 - rounding;
      return Math.max(most, off);
    }, Number.NEGATIVE_INFINITY);
    expect(worst).toBeLessThanOrEqual(1e-12);
    expect(volumeOf(mesh) / volumeOf(ours)).toBeCloseTo(1, 5);
  });
}

const parts: Part[] = [
  { name: 'sun', mesh: twistedPrism(7, 12.3, 20, 0.7) },
  { name: 'planet-1', mesh: moved(ball(9.1, 60), [-31.25, 4, 0]) },
  { name: 'ring', mesh: box([-55, -60.5, 0], [44, 33, 1 / 3]) },
];

describe('a 3MF read back by lib3mf', () => {
  test('holds every part by name, manifold, oriented and where it was', async () => {
    expectSame(parts, await readThreemf(encode3mf(parts)));
  });

  test('holds the reference set of 15, 15 and 45 teeth with five planets', async () => {
    const set = buildSet({ ...spinner(), tolerance: 0.05 });
    expect(set.map(({ name }) => name)).toEqual([
      'sun',
      ...[1, 2, 3, 4, 5].map((i) => `planet-${i}`),
      'ring',
    ]);
    const found = await readThreemf(encode3mf(set));
    expectSame(set, found);
    // Sun, one planet that the others refer to, ring.
    expect(found.stored).toBe(3);
  });

  test('the reader does tell a mesh that is not oriented', async () => {
    const mesh = box([0, 0, 0], [1, 2, 3]);
    const [a, b, c] = mesh.triangles;
    mesh.triangles.set([a, c, b]);
    const { meshes } = await readThreemf(encode3mf([{ name: 'turned', mesh }]));
    expect(meshes[0].manifoldAndOriented).toBe(false);
  });

  test('has one build item: an assembly of all parts in the positive octant', async () => {
    const { assemblies, items, meshes } = await readThreemf(encode3mf(parts, { title: 'table-spinner' }));
    expect(assemblies.map(({ name }) => name)).toEqual(['table-spinner']);
    const { components } = assemblies[0];
    expect(components.map(({ moved }) => moved)).toEqual([false, false, false]);
    expect(new Set(components.map(({ id }) => id)).size).toBe(parts.length);
    expect(items.length).toBe(1);
    expect(components.map(({ id }) => id)).not.toContain(items[0].id);
    const { transform } = items[0];
    expect(transform.slice(0, 9)).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
    const least = [0, 1, 2].map((axis) => {
      const values = meshes.flatMap(({ mesh }) =>
        Array.from(mesh.positions.filter((_, i) => i % 3 === axis)),
      );
      return Math.min(...values) + transform[9 + axis];
    });
    expect(least[0]).toBeCloseTo(10, 4);
    expect(least[1]).toBeCloseTo(10, 4);
    expect([least[2], transform[11]]).toEqual([0, 0]);
  });

  test('keeps names and titles whatever they hold', async () => {
    const names = ['a<b>&"c\'', ']]>', '</metadata>', 'Zahnkranz äöü – 齿圈 😀', '&amp;', '%2e%2e/..\\'];
    const hostile = names.map((name) => ({ name, mesh: box([0, 0, 0], [1, 1, 1]) }));
    for (const title of names) {
      const found = await readThreemf(encode3mf(hostile, { title }));
      expectSame(hostile, found);
      expect(found.metadata).toEqual([
        ['Title', title],
        ['Application', 'cogweave'],
      ]);
    }
  });

  test('carries a picture of itself where it is given one, and is the same package without', async () => {
    const picture = renderPicture(parts, { width: 64, height: 48 });
    const { thumbnail, warnings, ...found } = await readThreemf(encode3mf(parts, { thumbnail: picture }));
    expect(warnings).toBe(0);
    expect(thumbnail?.path).toBe('/Metadata/thumbnail.png');
    expect(Buffer.from(thumbnail?.bytes ?? []).equals(picture)).toBe(true);
    const plain = await readThreemf(encode3mf(parts));
    expect(plain).not.toHaveProperty('thumbnail');
    expect({ warnings, ...found }).toEqual(plain);
    expect(encode3mf(parts, { thumbnail: picture })).toEqual(encode3mf(parts, { thumbnail: picture }));
  });

  test('survives names that XML cannot carry', async () => {
    const mesh = box([0, 0, 0], [1, 1, 1]);
    const name = 'a\u0000b\u001bc\ud800d\uffffe\tf\ng';
    const { meshes } = await readThreemf(encode3mf([{ name, mesh }]));
    expect(meshes[0].name).toBe('a\ufffdb\ufffdc\ufffdd\ufffde f g');
  });
});

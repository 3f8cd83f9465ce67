// What a reader made by others finds in our files: lib3mf, the 3MF Consortium's own implementation, in its
// strict mode. Rules checked: 3MF Core Specification 1.2.4, sections 3.3, 3.4, 4.1 and 4.2.
import lib3mf, { type Lib3mf, type Model } from '@3mfconsortium/lib3mf';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Mesh, Part } from '../../lib/solid/mesh.js';
import { encode3mf } from '../../lib/write/threemf.js';
import { ball, box, moved, twistedPrism, volumeOf } from '../write/meshes.js';

let library: Lib3mf;
beforeAll(async () => {
  library = await lib3mf();
});

function read(bytes: Uint8Array): Model {
  library.FS.writeFile('/read.3mf', bytes);
  const model = new library.CWrapper().CreateModel();
  const reader = model.QueryReader('3mf');
  reader.SetStrictModeActive(true);
  reader.ReadFromFile('/read.3mf');
  expect(reader.GetWarningCount()).toBe(0);
  return model;
}

interface Found {
  name: string;
  mesh: Mesh;
  sound: boolean;
  typeIsModel: boolean;
}

function meshesIn(model: Model): Found[] {
  const found: Found[] = [];
  for (const objects = model.GetMeshObjects(); objects.MoveNext(); ) {
    const object = objects.GetCurrentMeshObject();
    const positions = new Float64Array(3 * object.GetVertexCount());
    for (let i = 0; i < positions.length / 3; i++) {
      const vertex = object.GetVertex(i);
      positions.set([vertex.get_Coordinates0(), vertex.get_Coordinates1(), vertex.get_Coordinates2()], 3 * i);
    }
    const triangles = new Uint32Array(3 * object.GetTriangleCount());
    for (let i = 0; i < triangles.length / 3; i++) {
      const triangle = object.GetTriangle(i);
      triangles.set([triangle.get_Indices0(), triangle.get_Indices1(), triangle.get_Indices2()], 3 * i);
    }
    found.push({
      name: object.GetName(),
      mesh: { positions, triangles },
      sound: object.IsManifoldAndOriented() && object.IsValid(),
      typeIsModel: object.GetType() === library.eObjectType.Model,
    });
  }
  return found;
}

/** Our parts against what was read: nothing lost, nothing turned, nothing moved beyond float32 rounding. */
function expectSame(parts: readonly Part[], found: readonly Found[]): void {
  expect(found.map(({ name }) => name)).toEqual(parts.map(({ name }) => name));
  found.forEach(({ mesh, sound, typeIsModel }, i) => {
    const ours = parts[i].mesh;
    expect(sound).toBe(true);
    expect(typeIsModel).toBe(true);
    expect(mesh.triangles).toEqual(ours.triangles);
    expect(mesh.positions.length).toBe(ours.positions.length);
    // Six decimals (half a nanometre) and then the reader's float32.
    const worst = ours.positions.reduce((most, value, k) => {
      const off = Math.abs(mesh.positions[k] - value) - 0.5e-6 - Math.abs(value) * 2 ** -24;
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
  test('holds every part by name, manifold, oriented and where it was', () => {
    const model = read(encode3mf(parts));
    expect(model.GetUnit()).toBe(library.eModelUnit.MilliMeter);
    expectSame(parts, meshesIn(model));
  });

  test('the reader does tell a mesh that is not oriented', () => {
    const mesh = box([0, 0, 0], [1, 2, 3]);
    const [a, b, c] = mesh.triangles;
    mesh.triangles.set([a, c, b]);
    const [found] = meshesIn(read(encode3mf([{ name: 'turned', mesh }])));
    expect(found.sound).toBe(false);
  });

  test('has one build item: an assembly of all parts in the positive octant', () => {
    const model = read(encode3mf(parts, { title: 'table-spinner' }));
    const assemblies = model.GetComponentsObjects();
    expect(assemblies.Count()).toBe(1n);
    assemblies.MoveNext();
    const assembly = assemblies.GetCurrentComponentsObject();
    expect(assembly.GetName()).toBe('table-spinner');
    const ids = parts.map((_, i) => assembly.GetComponent(i).GetObjectResourceID());
    expect(assembly.GetComponentCount()).toBe(parts.length);
    expect(new Set(ids).size).toBe(parts.length);
    const items = model.GetBuildItems();
    expect(items.Count()).toBe(1n);
    items.MoveNext();
    const item = items.GetCurrent();
    expect(ids).not.toContain(item.GetObjectResourceID());
    const move = item.GetObjectTransform();
    const rows = ([0, 1, 2] as const).map((i) =>
      [move[`get_Fields_${i}_0`](), move[`get_Fields_${i}_1`](), move[`get_Fields_${i}_2`]()].join(' '),
    );
    expect(rows).toEqual(['1 0 0', '0 1 0', '0 0 1']);
    const shift = [move.get_Fields_3_0(), move.get_Fields_3_1(), move.get_Fields_3_2()];
    const least = [0, 1, 2].map((axis) =>
      Math.min(
        ...meshesIn(model).flatMap(({ mesh }) => Array.from(mesh.positions).filter((_, i) => i % 3 === axis)),
      ),
    );
    expect(least[0] + shift[0]).toBeCloseTo(10, 4);
    expect(least[1] + shift[1]).toBeCloseTo(10, 4);
    expect(shift[2]).toBe(0);
    expect(least[2]).toBe(0);
  });

  test('keeps names and titles whatever they hold', () => {
    const names = ['a<b>&"c\'', ']]>', '</metadata>', 'Zahnkranz äöü – 齿圈 😀', '&amp;', '%2e%2e/..\\'];
    const hostile = names.map((name) => ({ name, mesh: box([0, 0, 0], [1, 1, 1]) }));
    for (const title of names) {
      const model = read(encode3mf(hostile, { title }));
      expectSame(hostile, meshesIn(model));
      const group = model.GetMetaDataGroup();
      const pairs = Array.from({ length: group.GetMetaDataCount() }, (_, i) => group.GetMetaData(i));
      expect(pairs.map((pair) => [pair.GetName(), pair.GetValue()])).toEqual([
        ['Title', title],
        ['Application', 'cogweave'],
      ]);
    }
  });

  test('survives names that XML cannot carry', () => {
    const mesh = box([0, 0, 0], [1, 1, 1]);
    const found = meshesIn(read(encode3mf([{ name: 'a\u0000b\u001bc\ud800d\uffffe\tf\ng', mesh }])));
    expect(found[0].name).toBe('a\ufffdb\ufffdc\ufffdd\ufffde f g');
  });
});

// Binary STL read back by a reader of a few lines written from the format's published layout (80-byte header,
// uint32 count, 50 bytes a facet, little endian), and by the STL writer of @jscad as a second opinion.
import { geometries } from '@jscad/modeling';
import { serialize } from '@jscad/stl-serializer';
import { describe, expect, test } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Mesh, Part } from '../../lib/solid/mesh.js';
import { encodeStl, stlChunks } from '../../lib/write/stl.js';
import { ball, box, moved, twistedPrism } from '../write/meshes.js';
import { spinner } from '../write/sheets.js';

interface Facet {
  normal: number[];
  corners: number[];
  attribute: number;
}

function readStl(bytes: Uint8Array): Facet[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  return Array.from({ length: count }, (_, i) => {
    const at = 84 + 50 * i;
    const floats = Array.from({ length: 12 }, (_, k) => view.getFloat32(at + 4 * k, true));
    return { normal: floats.slice(0, 3), corners: floats.slice(3), attribute: view.getUint16(at + 48, true) };
  });
}

/** The nine coordinates of every triangle, rounded to float32. */
function cornersOf({ positions, triangles }: Mesh): number[][] {
  const all: number[][] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const indices = Array.from(triangles.subarray(t, t + 3));
    all.push(indices.flatMap((v) => Array.from(positions.subarray(3 * v, 3 * v + 3), Math.fround)));
  }
  return all;
}

const parts: Part[] = [
  { name: 'sun', mesh: twistedPrism(5, 11, 20, 1.1) },
  { name: 'planet-1', mesh: moved(ball(8.2, 70), [30.1, -7, 0]) },
  { name: 'ring', mesh: box([-50, -50, 0], [50, 50, 0.1]) },
];

describe('binary STL', () => {
  test('has the published size', () => {
    // 12 facets: 684 bytes (84 + 50 n).
    expect(encodeStl([{ name: 'box', mesh: box([0, 0, 0], [1, 1, 1]) }]).length).toBe(684);
  });

  test('does not look like the text form', () => {
    const header = new TextDecoder('latin1').decode(encodeStl(parts).subarray(0, 80));
    expect(header.trimStart().toLowerCase().startsWith('solid')).toBe(false);
  });

  test('holds every triangle of every part, in order, to float32', () => {
    const facets = readStl(encodeStl(parts));
    expect(facets.map(({ corners }) => corners)).toEqual(parts.flatMap(({ mesh }) => cornersOf(mesh)));
    expect(facets.every(({ attribute }) => attribute === 0)).toBe(true);
  });

  test('holds the reference set of 15, 15 and 45 teeth with five planets', () => {
    const set = buildSet({ ...spinner(), tolerance: 0.05 });
    const corners = readStl(encodeStl(set)).map((facet) => facet.corners);
    expect(corners).toEqual(set.flatMap(({ mesh }) => cornersOf(mesh)));
  });

  test('normals have unit length and point outward', () => {
    const parts = [{ name: 'ball', mesh: ball(10, 40) }];
    for (const { normal, corners } of readStl(encodeStl(parts))) {
      expect(Math.hypot(...normal)).toBeCloseTo(1, 6);
      const outward = [corners[0], corners[1], corners[2] - 10];
      expect(normal.reduce((sum, value, k) => sum + value * outward[k], 0)).toBeGreaterThan(9);
    }
  });

  test('a face of known slope has the normal of its plane', () => {
    // The plane x/1 + y/2 + z/3 = 1 has the normal (6, 3, 2)/7.
    const mesh: Mesh = {
      positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 2, 0, 0, 0, 3),
      triangles: Uint32Array.of(1, 2, 3, 0, 2, 1, 0, 1, 3, 0, 3, 2),
    };
    const [slope] = readStl(encodeStl([{ name: 'corner', mesh }]));
    expect(slope.normal).toEqual([6 / 7, 3 / 7, 2 / 7].map(Math.fround));
  });

  test('a triangle without area gets no normal rather than none that is a number', () => {
    const mesh: Mesh = {
      positions: Float64Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0),
      triangles: Uint32Array.of(0, 1, 2),
    };
    expect(readStl(encodeStl([{ name: 'line', mesh }]))[0].normal).toEqual([0, 0, 0]);
  });

  test('chunks joined are the file, and each stays small', () => {
    const big: Part[] = [...parts, { name: 'fine', mesh: ball(20, 120) }];
    const chunks = [...stlChunks(big)];
    expect(Math.max(...chunks.map((chunk) => chunk.length))).toBeLessThanOrEqual(409_600);
    expect(chunks.filter((chunk) => chunk.length > 84 && chunk.length < 409_600).length).toBe(4);
    expect(Buffer.concat(chunks).equals(Buffer.from(encodeStl(big)))).toBe(true);
  });

  test('agrees facet for facet with another writer', () => {
    const mesh = twistedPrism(9, 16, 8, 0);
    const polygons = cornersOf(mesh).map((c) => [c.slice(0, 3), c.slice(3, 6), c.slice(6)]);
    const solid = geometries.geom3.fromPoints(polygons as [number, number, number][][]);
    const theirs = Buffer.concat(
      serialize({ binary: true }, solid).map((piece: ArrayBuffer) => Buffer.from(piece)),
    );
    // That writer first moves every vertex to a grid of about 0.0001 mm.
    const keysOf = (bytes: Uint8Array) =>
      readStl(bytes).map(({ normal, corners }) =>
        [...normal, ...corners].map((v) => Math.round(v * 500) + 0).join(' '),
      );
    const ours = keysOf(encodeStl([{ name: 'prism', mesh }]));
    expect(new Set(ours).size).toBe(mesh.triangles.length / 3);
    expect(keysOf(theirs).sort()).toEqual(ours.sort());
  });
});

import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import type { Part } from '../../lib/solid/mesh.js';
import { encode3mf, threemfChunks } from '../../lib/write/threemf.js';
import { ball, box, twistedPrism } from './meshes.js';

const parts = (): Part[] => [
  { name: 'sun', mesh: twistedPrism(7, 12.3, 20, 0.7) },
  { name: 'ring', mesh: ball(15, 90) },
];
const modelOf = (bytes: Uint8Array): string => strFromU8(unzipSync(bytes)['3D/3dmodel.model']);

describe('encode3mf', () => {
  test('packs what the package rules ask for, content types first', () => {
    const files = unzipSync(encode3mf(parts()));
    expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(strFromU8(files['_rels/.rels'])).toContain('Target="/3D/3dmodel.model"');
  });

  test('gives the same bytes each time, whatever the day', () => {
    const first = Buffer.from(encode3mf(parts()));
    const [now, zone] = [Date.now, process.env.TZ];
    Date.now = () => 4e12;
    process.env.TZ = 'Pacific/Auckland';
    try {
      expect(Buffer.from(encode3mf(parts())).equals(first)).toBe(true);
    } finally {
      Date.now = now;
      process.env.TZ = zone;
    }
  });

  test('writes numbers plainly: no exponent, no zeros to no purpose, the nearest millionth', () => {
    const values = [1e-7, -1e-7, 4e-7, 6e-7, -6e-7, 0.1 + 0.2, -12.3456785, 1e3, 2.5e5 + 1e-6, -99.5, 1 / 3];
    // One point a value, kept apart by z, in a fan of triangles whose closedness nobody checks here.
    const positions = Float64Array.from(values.flatMap((value, i) => [value, -value, i]));
    const triangles = Uint32Array.from({ length: 12 }, (_, i) => i % values.length);
    const xml = modelOf(encode3mf([{ name: 'points', mesh: { positions, triangles } }]));
    const found = [...xml.matchAll(/<vertex x="([^"]*)" y="([^"]*)"/g)];
    expect(found.length).toBe(values.length);
    found.forEach(([, x, y], i) => {
      for (const text of [x, y]) expect(text).toMatch(/^(0|-?(0|[1-9]\d*)(\.\d{0,5}[1-9])?)$/);
      expect(Number(x)).toBe(Math.round(values[i] * 1e6) / 1e6 + 0);
      expect(Number(y)).toBe(Math.round(-values[i] * 1e6) / 1e6 + 0);
    });
  });

  test('comes piece by piece too, no piece of it large', () => {
    const chunks = [...threemfChunks(parts())];
    expect(Buffer.concat(chunks).equals(encode3mf(parts()))).toBe(true);
    expect(chunks.length).toBeGreaterThan(10);
    expect(Math.max(...chunks.map(({ length }) => length))).toBeLessThan(1 << 18);
  });

  test('is well-formed after many full buffers', () => {
    const xml = modelOf(encode3mf(parts()));
    const triangles = parts().reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
    expect(xml.match(/^<triangle v1="\d+" v2="\d+" v3="\d+"\/>$/gm)?.length).toBe(triangles);
    expect(xml.length).toBeGreaterThan(10 * 65_536);
  });

  test.each([
    ['no part', [], 'parts'],
    [
      'a part without a body',
      [{ name: 'sun', mesh: { positions: new Float64Array(), triangles: new Uint32Array() } }],
      'parts.sun.triangles',
    ],
    ['a position that is no number', [withPosition(Number.NaN)], 'parts.ring.positions'],
    ['an endless position', [withPosition(Number.POSITIVE_INFINITY)], 'parts.ring.positions'],
    ['a position beyond 4 km', [withPosition(-4.1e6)], 'parts.ring.positions'],
  ])('refuses %s', (_, given: Part[], parameter) => {
    expect(() => encode3mf(given)).toThrow(Refusal);
    expect(() => encode3mf(given)).toThrow(expect.objectContaining({ parameter }));
  });

  test('refuses two vertices that would be written alike, and only those', () => {
    const pinched = (apart: number): Part => {
      const mesh = box([0, 0, 0], [apart, 20, 30]);
      return { name: 'thin', mesh };
    };
    expect(() => encode3mf([pinched(4e-7)])).toThrow(/vertices 0 and 1 are the same within 0.000001 mm/);
    expect(modelOf(encode3mf([pinched(1e-6)]))).toContain('<vertex x="0.000001" y="0" z="0"/>');
  });
});

function withPosition(value: number): Part {
  const mesh = box([0, 0, 0], [1, 1, 1]);
  mesh.positions[4] = value;
  return { name: 'ring', mesh };
}

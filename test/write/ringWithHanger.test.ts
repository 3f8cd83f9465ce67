// The sample script as a user runs it, against the built package (`npm test` builds first).
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readThreemf } from '../outside/readThreemf.js';
import { volumeOf } from './meshes.js';

const run = promisify(execFile);
const script = fileURLToPath(new URL('../../samples/ring-with-hanger.mjs', import.meta.url));
let folder: string;
let printed: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hanger-'));
  printed = (await run(process.execPath, [script, folder])).stdout;
}, 60_000);
afterAll(() => rm(folder, { recursive: true }));

describe('samples/ring-with-hanger.mjs', () => {
  test('names the files it wrote', () => {
    expect(printed.trim().split('\n')).toEqual(
      ['stl', '3mf'].map((ending) => join(folder, `hanging-spinner.${ending}`)),
    );
  });

  test('writes a closed ring with the eye on it, among the parts of the set', async () => {
    const { meshes } = await readThreemf(await readFile(join(folder, 'hanging-spinner.3mf')));
    expect(meshes.map(({ name }) => name)).toEqual([
      'sun',
      ...[1, 2, 3, 4].map((i) => `planet-${i}`),
      'ring',
    ]);
    for (const { manifoldAndOriented } of meshes) expect(manifoldAndOriented).toBe(true);
    const ring = meshes[5].mesh.positions;
    const ys = ring.filter((_, i) => i % 3 === 1);
    const outer = -Math.min(...ys);
    // The eye reaches 2 · 7 mm from half the rim's 5 mm outward.
    expect(Math.max(...ys)).toBeCloseTo(outer - 2.5 + 14, 1);
    expect(Math.max(...ring.filter((_, i) => i % 3 === 2))).toBeCloseTo(10, 6);
  });

  test('writes the same bodies as STL through the library of its own choice', async () => {
    const bytes = await readFile(join(folder, 'hanging-spinner.stl'));
    const count = bytes.readUInt32LE(80);
    expect(bytes.length).toBe(84 + 50 * count);
    let six = 0;
    for (let t = 0; t < count; t++) {
      const c = Array.from({ length: 9 }, (_, k) => bytes.readFloatLE(84 + 50 * t + 12 + 4 * k));
      six +=
        c[0] * (c[4] * c[8] - c[5] * c[7]) +
        c[1] * (c[5] * c[6] - c[3] * c[8]) +
        c[2] * (c[3] * c[7] - c[4] * c[6]);
    }
    const { meshes } = await readThreemf(await readFile(join(folder, 'hanging-spinner.3mf')));
    const volume = meshes.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
    // That writer moves corners to a grid of its own, by some 0.001 mm.
    expect(six / 6 / volume).toBeCloseTo(1, 3);
  });

  test('asks for a folder', async () => {
    await expect(run(process.execPath, [script])).rejects.toMatchObject({
      code: 2,
      stderr: 'usage: node samples/ring-with-hanger.mjs OUTDIR\n',
    });
  });
});

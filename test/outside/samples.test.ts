import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import { readSpec } from '../../lib/spec/readSpec.js';
import { encode3mf } from '../../lib/write/threemf.js';
import { kernelBody, startKernel } from './kernel.js';
import { readThreemf } from './readThreemf.js';

const samples = join(import.meta.dirname, '..', '..', 'samples');
const kernel = await startKernel();

/** Every part of every sample file, features and loose parts included, against two readers of other people. */
describe('samples', () => {
  it.each(readdirSync(samples).filter((name) => name.endsWith('.yaml')))(
    '%s is accepted by manifold-3d and lib3mf, part by part',
    async (file) => {
      const spec = readSpec(readFileSync(join(samples, file), 'utf8'));
      const parts = buildSet(spec);
      for (const { name, mesh } of parts) {
        const body = kernelBody(kernel, mesh);
        expect(body.status(), name).toBe('NoError');
        expect(body.numTri(), name).toBe(mesh.triangles.length / 3);
        expect(body.volume(), name).toBeGreaterThan(0);
        body.delete();
      }
      const { warnings, meshes } = await readThreemf(encode3mf(parts));
      expect(warnings).toBe(0);
      expect(meshes.map(({ name }) => name).sort()).toEqual(parts.map(({ name }) => name).sort());
      for (const { name, valid, manifoldAndOriented } of meshes)
        expect([name, valid, manifoldAndOriented]).toEqual([name, true, true]);
    },
  );

  it('hold the spinner in its table with a clamp ring of its own', () => {
    const spec = readSpec(readFileSync(join(samples, 'table-spinner.yaml'), 'utf8'));
    const parts = buildSet(spec).map(({ name, mesh }) => ({ name, body: kernelBody(kernel, mesh) }));
    const { body } = parts.find(({ name }) => name === 'clamp-ring')!;
    for (const other of parts)
      if (other.body !== body) expect(body.minGap(other.body, 10), other.name).toBeGreaterThan(2);
    // One opening for the ring and six for the screws.
    expect(body.genus()).toBe(7);
    expect(parts.find(({ name }) => name === 'ring')!.body.genus()).toBe(7);
    for (const part of parts) part.body.delete();
  });
});

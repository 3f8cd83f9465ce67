// How time and memory grow with triangles, planets and variants; each point in a process of its own.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { alone } from './timing.mjs';

const here = new URL('.', import.meta.url);

/** Builds and streams the reference set as STL at each tolerance, mm. */
export function growthWithTriangles(tolerances) {
  return tolerances.map((tolerance) => {
    const { result, memory } = alone(`
      const { buildSet, stlChunks } = await import(${JSON.stringify(new URL('../../dist/lib/index.js', here).href)});
      const { spec } = await import(${JSON.stringify(new URL('reference.mjs', here).href)});
      const { openSync, writeSync, closeSync, unlinkSync } = await import('node:fs');
      const path = ${JSON.stringify(join(tmpdir(), 'cogweave-growth.stl'))};
      buildSet(spec);
      const started = performance.now();
      const parts = buildSet({ ...spec, tolerance: ${tolerance} });
      const file = openSync(path, 'w');
      for (const chunk of stlChunks(parts)) writeSync(file, chunk);
      closeSync(file);
      unlinkSync(path);
      return { ms: performance.now() - started, triangles: parts.reduce((n, { mesh }) => n + mesh.triangles.length / 3, 0) };`);
    return { tolerance, ...result, memory };
  });
}

/** Builds sets of more and more small planets in place of few. */
export function growthWithPlanets(sets) {
  return sets.map(([sun, planet, count]) => {
    const { result, memory } = alone(`
      const { buildSet, encodeStl, resolveSpec } = await import(${JSON.stringify(new URL('../../dist/lib/index.js', here).href)});
      const { reference } = await import(${JSON.stringify(new URL('reference.mjs', here).href)});
      const spec = resolveSpec({ ...reference, sun: { teeth: ${sun} }, planets: { teeth: ${planet}, count: ${count} }, ring: { rim: 5 } });
      buildSet(spec);
      const started = performance.now();
      const parts = buildSet(spec);
      encodeStl(parts);
      return { ms: performance.now() - started, triangles: parts.reduce((n, { mesh }) => n + mesh.triangles.length / 3, 0) };`);
    return { planets: count, ...result, memory };
  });
}

/** The machine's way to keep a process on its first core; none where it has no such command. */
const onOneCore = spawnSync('taskset', ['-c', '0', 'true']).status === 0 ? ['taskset', '-c', '0'] : null;

/**
 * The batch command over ever more variants.
 * @param oneCore keep it all on one core: workers' compilers and garbage collectors run beside them, so that one worker
 * alone already uses a tenth of a second core
 * @returns null where the machine cannot do that
 */
export function growthWithVariants(counts, jobs, oneCore = false) {
  if (oneCore && !onOneCore) return null;
  const folder = mkdtempSync(join(tmpdir(), 'cogweave-batch-'));
  const rows = counts.map((count) => ({ variants: count, jobs, ...batchOf(folder, count, jobs, oneCore) }));
  rmSync(folder, { recursive: true });
  return rows;
}

function batchOf(folder, count, jobs, oneCore) {
  const file = join(folder, 'many.yaml');
  const gaps = Array.from({ length: count }, (_, i) => 0.2 + (0.2 * i) / count);
  writeFileSync(file, JSON.stringify({ ...small, variants: { 'fit.gap': gaps } }));
  const command = new URL('../../dist/bin/cogweave.js', here).pathname;
  // GNU time would do as well; the process itself reports its peak.
  const peak = `data:text/javascript,process.on('exit',()=>process.stderr.write('PEAK '+process.resourceUsage().maxRSS+'\\n'))`;
  const words = [
    ...(oneCore ? onOneCore : []),
    process.execPath,
    ...['--import', peak, command, 'batch', file],
    ...['--out', join(folder, `out-${count}-${jobs}-${oneCore}`), '--jobs', String(jobs), '--format', 'stl'],
  ];
  const started = performance.now();
  const { status, stderr } = spawnSync(words[0], words.slice(1), { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (status !== 0) throw new Error(stderr);
  const peaks = [...stderr.matchAll(/PEAK (\d+)/g)].map(([, kb]) => Number(kb) / 1024);
  return { ms: performance.now() - started, memory: Math.max(...peaks) };
}

/** A set that is made in some tenths of a second. */
const small = {
  kind: 'planetary',
  module: 1.5,
  faceWidth: 10,
  tolerance: 0.03,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 3 },
};

// How time and memory grow with triangles, planets and variants; each point in a process of its own.

import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { alone, middle } from './timing.mjs';

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

/** The machine's way to keep a process on one core; none where it has no such command. */
const onCore = (core) => ['taskset', '-c', String(core)];
const canKeep = spawnSync(...words([...onCore(1), 'true'])).status === 0;

/** The batch command over ever more variants. */
export function growthWithVariants(counts, jobs) {
  const folder = mkdtempSync(join(tmpdir(), 'cogweave-batch-'));
  const rows = counts.map((count) => ({ variants: count, jobs, ...batchOf(folder, count, jobs) }));
  rmSync(folder, { recursive: true });
  return rows;
}

/**
 * A batch kept on one core against one with two workers on two, by turns, medians, ms. One worker alone already uses a
 * tenth of a second core, since its compiler and garbage collector run beside it. What the machine itself allows is told by
 * its halves in two processes, each on a core of its own, that share nothing.
 * @returns null where the machine cannot keep a process on a core, or has only one
 */
export async function twoCoresAgainstOne(count, runs) {
  if (!canKeep) return null;
  const times = [];
  for (let run = 0; run < runs; run++) {
    const folder = mkdtempSync(join(tmpdir(), 'cogweave-batch-'));
    const one = batchOf(folder, count, 1, onCore(0)).ms;
    const two = batchOf(folder, count, 2).ms;
    const started = performance.now();
    await Promise.all([1, 2].map((shard) => halfOf(folder, count, shard)));
    times.push([one, two, performance.now() - started]);
    rmSync(folder, { recursive: true });
  }
  const [one, two, apart] = [0, 1, 2].map((k) => middle(times.map((turn) => turn[k])));
  return { variants: count, one, two, apart, gain: one / two, ceiling: one / apart };
}

/** One of two shards, kept on a core of its own; the batch's file is there already. */
function halfOf(folder, count, shard) {
  const out = join(folder, `apart-${count}`);
  const command = [...onCore(shard - 1), ...batchWords(folder, out, 1), '--shard', `${shard}/2`];
  return new Promise((resolve, reject) => {
    const [first, rest] = words(command);
    spawn(first, rest, { stdio: 'ignore' }).on('exit', (status) =>
      status === 0 ? resolve() : reject(new Error(`shard ${shard} ended with ${status}`)),
    );
  });
}

/** As `spawn` takes a command. */
function words([first, ...rest]) {
  return [first, rest];
}

function batchWords(folder, out, jobs) {
  const command = new URL('../../dist/bin/cogweave.js', here).pathname;
  // GNU time would do as well; the process itself reports its peak.
  const peak = `data:text/javascript,process.on('exit',()=>process.stderr.write('PEAK '+process.resourceUsage().maxRSS+'\\n'))`;
  return [
    ...[process.execPath, '--import', peak, command, 'batch', join(folder, 'many.yaml')],
    ...['--out', out, '--jobs', String(jobs), '--format', 'stl'],
  ];
}

function batchOf(folder, count, jobs, before = []) {
  const file = join(folder, 'many.yaml');
  const gaps = Array.from({ length: count }, (_, i) => 0.2 + (0.2 * i) / count);
  writeFileSync(file, JSON.stringify({ ...small, variants: { 'fit.gap': gaps } }));
  const command = [...before, ...batchWords(folder, join(folder, `out-${count}-${jobs}`), jobs)];
  const started = performance.now();
  const { status, stderr } = spawnSync(...words(command), { encoding: 'utf8', maxBuffer: 1 << 26 });
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

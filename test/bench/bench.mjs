// What the project must reach in time and memory, on the machine at hand, ratios in one run: `npm run bench`.
// Prints a table and writes out/bench.json. `npm run bench -- --quick` leaves out growth and the slow comparisons.
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildSet, encode3mf, encodeStl, inspectSet, planSets } from 'cogweave';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { growthWithPlanets, growthWithTriangles, growthWithVariants, twoCoresAgainstOne } from './growth.mjs';
import { spec } from './reference.mjs';
import { alone, median, medians } from './timing.mjs';

/** Sets built before timing begins. */
const WARM = 100;

const quick = process.argv.includes('--quick');
const folder = mkdtempSync(join(tmpdir(), 'cogweave-bench-'));
const rows = [];
const row = (what, figure, unit, wanted = '', holds = null) => {
  rows.push({ what, figure, unit, wanted, holds });
  const verdict = holds === null ? '' : holds ? 'reached' : 'NOT REACHED';
  console.log(
    `${what.padEnd(66)} ${format(figure).padStart(10)} ${unit.padEnd(5)} ${wanted.padEnd(18)} ${verdict}`,
  );
};
const format = (figure) => (Math.abs(figure) >= 100 ? figure.toFixed(0) : figure.toPrecision(3));

const parts = buildSet(spec);
const stl = encodeStl(parts);
const triangles = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
row('triangles of the reference set', triangles, '');
row('STL', stl.length / 1e6, 'MB');
const path = join(folder, 'bench.stl');
const flush = () => {
  const file = openSync(path, 'w');
  writeSync(file, stl);
  fsyncSync(file);
  closeSync(file);
};
// What is built again and again in one process is compiled by then; a first set is timed below, in a process of its own.
for (let i = 0; i < WARM; i++) encodeStl(buildSet(spec));
const [ours, disk, flushed] = medians(
  [() => encodeStl(buildSet(spec)), () => writeFileSync(path, stl), flush],
  51,
);
row('build and STL in memory', ours, 'ms');
row("write the same bytes to disk (the system's cache)", disk, 'ms');
row('write them until they are on the disk', flushed, 'ms');
row('  build and STL / writing to the cache', ours / disk, '', 'at most 3', ours / disk <= 3);

const package3mf = encode3mf(parts);
const model = unzipSync(package3mf)['3D/3dmodel.model'];
const encode = median(() => encode3mf(parts), 5);
const zip = median(() => zipSync({ '3D/3dmodel.model': model, 'x.rels': strToU8('') }, { level: 3 }), 5);
row('encode 3MF', encode, 'ms');
row('  encoding / zipping the same bytes', encode / zip, '');

const index = JSON.stringify(new URL('../../dist/lib/index.js', import.meta.url).href);
const file = JSON.stringify(new URL('reference.mjs', import.meta.url).href);
const memory = alone(
  `const { buildSet, encodeStl } = await import(${index}); const { spec } = await import(${file});
  const started = performance.now(); encodeStl(buildSet(spec)); return performance.now() - started;`,
);
row('first build and STL in a fresh process', memory.result, 'ms');
row(
  'peak memory of a process that builds and encodes STL',
  memory.memory,
  'MB',
  'at most 150',
  memory.memory <= 150,
);
const inspect = median(() => inspectSet(spec), 3);
row('inspect, everything measured', inspect / 1000, 's', 'under 2', inspect < 2000);
const plan = median(() => planSets({ module: 1.5 }), 5);
row('plan, up to 120 ring teeth, 3 to 8 planets', plan / 1000, 's', 'under 0.2', plan < 200);

const result = { node: process.version, date: new Date().toISOString(), rows };
if (!quick) {
  const { compare } = await import('./compare/run.mjs');
  const found = compare(spec, ours);
  result.compare = found;
  row('deviation measured, both ways', 1000 * found.deviation, 'µm');
  row('toothed triangles, plain twisted extrude', found.triangles.plainExtrude, '');
  row('toothed triangles, ours', found.triangles.cogweave, '');
  row('  share', found.triangles.share, '', 'at most 1/3', found.triangles.share <= 1 / 3);
  row('twisted extrude and booleans by manifold-3d, STL', found.kernel.ms, 'ms');
  row('  ours / theirs', found.kernel.ratio, '', 'at most 0.5', found.kernel.ratio <= 0.5);
  const [coarse, finer] = found.jscad.runs;
  row(`sun by @jscad/modeling at ${coarse.triangles} triangles`, coarse.ms / 1000, 's');
  row(`sun by @jscad/modeling at ${finer.triangles} triangles`, finer.ms / 1000, 's');
  row(`  grows with the power`, found.jscad.power, '');
  row(
    '  so for one sun, planet and ring as fine as ours (extrapolated)',
    found.jscad.extrapolatedMs / 1000,
    's',
  );
  row('  theirs / ours', found.jscad.timesSlower, '', 'at least 200', found.jscad.timesSlower >= 200);

  result.growth = {
    triangles: growthWithTriangles([0.08, 0.01, 0.001, 0.0001, 0.00003]),
    planets: growthWithPlanets([
      [15, 15, 3],
      [15, 15, 4],
      [15, 15, 5],
      [16, 10, 6],
      [18, 6, 8],
    ]),
    oneWorker: growthWithVariants([8, 32, 128], 1),
    twoWorkers: growthWithVariants([8, 32, 128], 2),
  };
  for (const { triangles: count, ms, memory: mb } of result.growth.triangles)
    row(
      `${count} triangles built and streamed to disk: a million takes`,
      (1e6 * ms) / count,
      'ms',
      `${mb.toFixed(0)} MB`,
    );
  const most = result.growth.triangles.at(-1);
  row(`peak memory at ${most.triangles} triangles`, most.memory, 'MB', 'under 500', most.memory < 500);
  for (const { planets, triangles: count, ms } of result.growth.planets)
    row(`${planets} planets, ${count} triangles`, ms, 'ms');
  const [one, two] = [result.growth.oneWorker, result.growth.twoWorkers];
  one.forEach(({ variants, ms, memory: mb }, i) => {
    row(`batch of ${variants}, one worker`, ms / 1000, 's', `${mb.toFixed(0)} MB`);
    row(`batch of ${variants}, two workers`, two[i].ms / 1000, 's', `${two[i].memory.toFixed(0)} MB`);
  });
  row('  two workers are faster than one by', one.at(-1).ms / two.at(-1).ms, '');
  // Both workers of a batch compile for themselves, so the longer it is the more a second core gains.
  const cores = [await twoCoresAgainstOne(64, 3), await twoCoresAgainstOne(256, 1)].filter(
    (each) => each !== null,
  );
  for (const { variants, one: first, two: both, apart, gain, ceiling } of cores) {
    row(`batch of ${variants}, one worker on one core`, first / 1000, 's');
    row(`batch of ${variants}, two workers on two cores`, both / 1000, 's');
    row(`its halves in two processes, a core each`, apart / 1000, 's');
    row('  two processes are faster than one core by', ceiling, '');
    const long = variants === 256;
    row(
      '  two cores are faster than one by',
      gain,
      '',
      long ? 'at least 1.8' : '',
      long ? gain >= 1.8 : null,
    );
  }
  result.growth.cores = cores;
}
rmSync(folder, { recursive: true });
mkdirSync('out', { recursive: true });
writeFileSync('out/bench.json', `${JSON.stringify(result, null, 2)}\n`);
console.log('written to out/bench.json');

// Timings of the reference set on the machine at hand: `npm run bench`. Medians of several runs, ratios in one run.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildSet, encode3mf, encodeStl, inspectSet, planSets, resolveSpec } from 'cogweave';

const RUNS = 7;
const reference = resolveSpec({
  kind: 'planetary',
  module: 1.5,
  faceWidth: 20,
  sun: { teeth: 15, bore: { shape: 'round', diameter: 8 } },
  planets: { teeth: 15, count: 5 },
  ring: { teeth: 45, rim: 5 },
});
const folder = mkdtempSync(join(tmpdir(), 'cogweave-bench-'));
const parts = buildSet(reference);
const stl = encodeStl(parts);

const rows = {
  'build and STL in memory': median(() => encodeStl(buildSet(reference))),
  'write the same STL bytes to disk': median(() => writeFileSync(join(folder, 'bench.stl'), stl)),
  'encode 3MF': median(() => encode3mf(parts)),
  inspect: median(() => inspectSet(reference)),
  'plan, up to 120 ring teeth, 3 to 8 planets': median(() => planSets({ module: 1.5 })),
};
rmSync(folder, { recursive: true });

const triangles = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
console.log(
  `reference set: ${triangles} triangles, STL ${(stl.length / 1e6).toFixed(2)} MB, ${RUNS} runs each, medians`,
);
for (const [name, ms] of Object.entries(rows))
  console.log(`${name.padEnd(44)} ${ms.toFixed(1).padStart(8)} ms`);
console.log(`peak memory of this process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);

function median(run) {
  run();
  const times = Array.from({ length: RUNS }, () => {
    const started = performance.now();
    run();
    return performance.now() - started;
  }).sort((a, b) => a - b);
  return times[RUNS >> 1];
}

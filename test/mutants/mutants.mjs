// Small changes to the code, one at a time, each held against the tests of its folder: what lives shows what no test notices.
//   npm run mutants -- lib/tooth [lib/train …] [--one-in 30] [--seed 1] [--anew]
// Results are kept under out/mutants and gone on with: only what changed since, and what lives, is run again. Without --one-in every mutant is run. Takes long; never part of a test. Exit status 1 below 85 % noticed.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { fileOf, identityOf, inSample, lives, reasonFor } from './mutant.mjs';
import { groupOf, testsOf } from './tests.mjs';

/** Share of mutants that the tests are to notice. */
const WANTED = 0.85;
/** Of the run without a mutant's change, and on top of it, ms: a machine that others use is slow now and then. */
const TIMEOUT = { timeoutFactor: 4, timeoutMS: 60_000 };

/** A test that is over at once, for a run that only lists. */
const NO_TEST = 'test/train/ranked.test.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    'one-in': { type: 'string', default: '1' },
    seed: { type: 'string', default: '1' },
    anew: { type: 'boolean', default: false },
  },
});
const sample = { oneIn: Number(values['one-in']), seed: Number(values.seed) };
if (positionals.length === 0 || !Object.values(sample).every(Number.isInteger) || sample.oneIn < 1) {
  console.error(
    'usage: npm run mutants -- FOLDER_OF_LIB … [--one-in WHOLE_NUMBER] [--seed WHOLE_NUMBER] [--anew]',
  );
  process.exit(2);
}

console.log(`seed ${sample.seed}, one mutant in ${sample.oneIn}`);
const rows = [];
for (const path of positionals.map((given) => given.replace(/\/+$/, ''))) rows.push(await tried(path));
console.table(Object.fromEntries([...rows, ['together', total(rows)]]));
const { noticed, survived } = total(rows);
const share = noticed / (noticed + survived);
console.log(`${(100 * share).toFixed(1)} % noticed of those that are not equivalent`);
process.exitCode = share >= WANTED ? 0 : 1;

/** Runs one folder or file, in groups that share their tests. @returns its path and what became of its mutants */
async function tried(path) {
  const files = path.endsWith('.ts') ? [path] : filesIn(path);
  const all = sample.oneIn > 1 ? await listed(path, files) : null;
  const results = [];
  for (const group of new Set(files.map(groupOf))) {
    const own = files.filter((file) => groupOf(file) === group);
    // Only what is in the sample is put into the code at all: tests are a good deal faster so.
    const mutate = all
      ? all
          .filter((mutant) => own.includes(fileOf(mutant)) && inSample(identityOf(mutant, 1), sample))
          .map(rangeOf)
      : own;
    if (mutate.length > 0) results.push(...(await heldAgainst(testsOf(group), `${path} ${group}`, mutate)));
  }
  const own = results.filter(({ status }) => status !== 'CompileError' && status !== 'Ignored');
  const lived = own.filter(lives);
  const survivors = lived.filter((mutant) => !reasonFor(mutant));
  return [
    path,
    {
      generated: (all ?? results).length,
      tried: own.length,
      noticed: own.length - lived.length,
      'of these timed out': own.filter(({ status }) => status === 'Timeout').length,
      survived: survivors.length,
      equivalent: lived.length - survivors.length,
    },
  ];
}

function filesIn(folder) {
  const names = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.ts'));
  return names.map((name) => `${folder}/${name.replaceAll('\\', '/')}`).sort();
}

/** Every mutant there is, none of them run. */
function listed(path, files) {
  return run([NO_TEST], `${path} list`, {
    mutate: files,
    checkers: ['sample'],
    sample: { seed: 0, oneIn: 0 },
    reporters: [],
    logLevel: 'error',
  });
}

function heldAgainst(tests, name, mutate) {
  return run(tests, name, {
    mutate,
    checkers: sample.oneIn > 1 ? ['sample'] : [],
    sample,
    incremental: true,
    force: values.anew,
    reporters: ['html', 'living', 'progress-append-only'],
  });
}

function run(tests, name, options) {
  // Not the tester's own way to choose tests, under which what modules work out as they are loaded is never changed.
  process.env.MUTANTS_TESTS = JSON.stringify(tests);
  const kept = `out/mutants/${name.replaceAll('/', '-').replaceAll(' ', '_')}-${sample.oneIn}-${sample.seed}`;
  if (existsSync(`${kept}.json`)) forgetLiving(`${kept}.json`);
  return new Stryker({
    testRunner: 'vitest',
    vitest: { configFile: 'test/mutants/vitest.config.ts', related: false },
    plugins: ['@stryker-mutator/vitest-runner', new URL('plugins.mjs', import.meta.url).pathname],
    coverageAnalysis: 'perTest',
    concurrency: 1,
    incrementalFile: `${kept}.json`,
    htmlReporter: { fileName: `${kept}.html` },
    tempDirName: 'out/mutants/sandbox',
    cleanTempDir: 'always',
    ignorePatterns: ['dist', 'out'],
    disableTypeChecks: false,
    tsconfigFile: 'none',
    dryRunTimeoutMinutes: 30,
    warnings: { slow: false },
    logLevel: 'warn',
    ...TIMEOUT,
    ...options,
  }).runMutationTest();
}

/** The tester keeps what lives until a test that it knows to come there is added; some come there as they are collected. */
function forgetLiving(path) {
  const known = JSON.parse(readFileSync(path, 'utf8'));
  for (const file of Object.values(known.files)) file.mutants = file.mutants.filter((one) => !lives(one));
  writeFileSync(path, JSON.stringify(known));
}

function rangeOf({ fileName, location: { start, end } }) {
  return `${fileOf({ fileName })}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
}

function total(all) {
  const sum = {};
  for (const [, row] of all)
    for (const [key, value] of Object.entries(row)) sum[key] = (sum[key] ?? 0) + value;
  return sum;
}

// Random parameter files, each made and proved again by another kernel, or refused with offers that work:
//   npm run fuzz -- --count 10000 --seed 1 --report fuzz.jsonl [--quick]
// A report that is there already is gone on with. Exit status 1 when anything was found.
import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs';
import { parseArgs } from 'node:util';
import Module from 'manifold-3d';
import { stringify } from 'yaml';
import { examine } from './examine.mjs';
import { parameterFile } from './parameterFile.mjs';

/** Every so many files the gaps of a made set are measured by the other kernel too. */
const GAPS_EVERY = 4;
/** With --quick only that many are built at all. */
const QUICK_EVERY = 20;

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '10000' },
    seed: { type: 'string', default: '1' },
    first: { type: 'string', default: '0' },
    report: { type: 'string' },
    quick: { type: 'boolean', default: false },
  },
});
const [count, seed, first] = [values.count, values.seed, values.first].map(Number);

const kernel = await Module();
kernel.setup();

const tally = {};
let faulty = 0;
const done = values.report ? earlier(values.report) : [];
for (const entry of done) add(entry);
for (let index = first + done.length; index < first + count; index++) {
  const entry = { seed, index, ...resultOf(index) };
  if (values.report) appendFileSync(values.report, `${JSON.stringify(entry)}\n`);
  add(entry);
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${first + count}, ${faulty} found`);
}
console.log(JSON.stringify({ seed, first, count, tally, found: faulty }));
process.exitCode = faulty ? 1 : 0;

function resultOf(index) {
  const data = parameterFile(seed, index);
  const text = stringify(data);
  const started = performance.now();
  let result;
  try {
    result = examine(
      data,
      text,
      kernel,
      index % (values.quick ? QUICK_EVERY : GAPS_EVERY) === 0,
      values.quick,
      index,
    );
  } catch (error) {
    result = { outcome: 'crashed', faults: [`examining threw ${error.stack}`] };
  }
  const ms = Math.round(performance.now() - started);
  return { ...result, ms, ...(result.faults.length ? { data, text } : {}) };
}

function add(entry) {
  tally[entry.outcome] = (tally[entry.outcome] ?? 0) + 1;
  if (!entry.faults.length) return;
  faulty++;
  if (!values.report) console.log(JSON.stringify(entry));
}

/** Entries of an earlier run; a last line that it could not finish is cut off. */
function earlier(path) {
  if (!existsSync(path)) return [];
  const text = readFileSync(path, 'utf8');
  const whole = text.slice(0, text.lastIndexOf('\n') + 1);
  if (whole.length < text.length) truncateSync(path, Buffer.byteLength(whole));
  const entries = whole
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));
  const wrong = entries.find((entry, i) => entry.seed !== seed || entry.index !== first + i);
  if (wrong) throw new Error(`${path} belongs to another seed or start: --seed ${wrong.seed}`);
  return entries;
}

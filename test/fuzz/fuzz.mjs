// Random parameter files, each made and proved again by another kernel, or refused with offers that work:
//   npm run fuzz -- --count 10000 --seed 1 --report fuzz.jsonl [--quick]
// A report that is there already is gone on with. Exit status 1 when anything was found. The last line counts files made,
// refused and crashed (worked out only, with --quick), those with a carrier, lips or shifts to be found, offers that were
// built and those of them that were made, and names the slowest file and the largest.
import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { stringify } from 'yaml';
import { examiners } from './examiners.mjs';
import { isInvolved, parameterFile } from './parameterFile.mjs';

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

const tally = { made: 0, refused: 0, crashed: 0 };
const offers = { tried: 0, made: 0 };
let involved = 0;
let faulty = 0;
/** The file that took longest, and the one that took the most memory. */
let slowest;
let largest;
const { examined, close } = examiners();
const done = values.report ? earlier(values.report) : [];
for (const entry of done) add(entry);
for (let index = first + done.length; index < first + count; index++) {
  const entry = await entryOf(index);
  if (values.report) appendFileSync(values.report, `${JSON.stringify(entry)}\n`);
  add(entry);
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${first + count}, ${faulty} found`);
}
close();
console.log(JSON.stringify({ seed, first, count, tally, involved, offers, slowest, largest, found: faulty }));
process.exitCode = faulty ? 1 : 0;

async function entryOf(index) {
  const gaps = index % (values.quick ? QUICK_EVERY : GAPS_EVERY) === 0;
  const result = await examined({ seed, index, gaps, quick: values.quick });
  const data = parameterFile(seed, index);
  const entry = { seed, index, ...(isInvolved(data) && { involved: true }), ...result };
  return result.faults.length ? { ...entry, data, text: stringify(data) } : entry;
}

function add(entry) {
  tally[entry.outcome] = (tally[entry.outcome] ?? 0) + 1;
  if (entry.involved) involved++;
  offers.tried += entry.offers?.tried ?? 0;
  offers.made += entry.offers?.made ?? 0;
  const { index, cost } = entry;
  if (cost && !(slowest?.seconds >= cost.seconds)) slowest = { index, ...cost };
  if (cost && !(largest?.megabytes >= cost.megabytes)) largest = { index, ...cost };
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

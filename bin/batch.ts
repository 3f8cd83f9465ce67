import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { readBatch } from '../lib/batch/readBatch.js';
import { type BatchOutcome, type Outcome, runBatch } from '../lib/batch/runBatch.js';
import { inShard, readShard } from '../lib/batch/shard.js';
import { refuse } from '../lib/refusal.js';
import { isMapping } from '../lib/spec/plainData.js';
import { typedTolerance } from '../lib/spec/withTolerance.js';
import { readFormats } from '../lib/write/formats.js';
import { baseNameOf } from './baseName.js';
import { profileAt, readDataFile } from './dataFile.js';
import { complain, FAULT, interrupted, MADE, print, STOPPED, stopSignal } from './output.js';
import { pictureOf } from './picture.js';
import { wholeNumber } from './planWishes.js';
import { progressOf } from './progress.js';
import { type Arguments, fileOf } from './usage.js';

/** More workers than this only get in each other's way. */
const MOST_JOBS = 256;

/** Pictures in the index are small; --picture and --picture-size ask for larger ones. */
const INDEX_PICTURE = { width: 400, height: 300 };

/** Flags as they were typed. */
export interface BatchArguments extends Arguments {
  out?: string;
  jobs?: string;
  shard?: string;
  format?: string;
  profile?: string;
  tolerance?: string;
  strict?: boolean;
  picture?: boolean;
  'picture-size'?: string;
  json?: boolean;
}

/**
 * Makes the variants of a file and prints what became of each.
 * @returns exit status: 1 when any was refused
 * @throws Refusal for flags or a file that are wrong, and a folder that cannot be written
 */
export async function batch(argv: BatchArguments): Promise<number> {
  const formats = readFormats(argv.format);
  const jobs = argv.jobs === undefined ? availableParallelism() : wholeNumber('jobs', argv.jobs, 1);
  if (jobs > MOST_JOBS) refuse('out-of-range', 'jobs', jobs, `must be at most ${MOST_JOBS}`, [MOST_JOBS]);
  const picture = pictureOf(argv) ?? INDEX_PICTURE;
  const shard = readShard(argv.shard ?? '1/1');
  if (argv.out === undefined) refuse('missing', 'out', undefined, 'is required: the folder for the files');
  const path = fileOf(argv);
  const profile = argv.profile === undefined ? {} : profileAt(argv.profile);
  const data = dataOf(path, argv.tolerance);
  const whole = readBatch(data, baseNameOf(path, data), profile);
  const mine = whole.names.filter((_, index) => inShard(index, shard)).length;
  const progress = progressOf(mine);
  const signal = stopSignal();
  const said = new Set<string>();
  let done = 0;
  try {
    const { tolerance, strict = false, out: folder } = argv;
    const onDone = (outcome: Outcome) => {
      done++;
      progress.add(outcome);
    };
    // Shards that end together look at the same records again.
    const say = (words: string) => void said.add(words);
    const options = {
      folder,
      jobs,
      shard,
      profile,
      formats,
      strict,
      picture,
      tolerance,
      signal,
      onDone,
      say,
    };
    const outcome = await runBatch(whole, options);
    progress.stop();
    for (const words of said) complain(words);
    return report(outcome, folder, argv.json ?? false);
  } catch (error) {
    progress.stop();
    for (const words of said) complain(words);
    if (done > 0 && done < mine)
      complain(`${done} of ${mine} variants are done; the same command goes on from there`);
    if (!signal.aborted) throw error;
    complain('interrupted');
    return interrupted();
  }
}

function report({ outcomes, summary }: BatchOutcome, folder: string, json: boolean): number {
  const count = (status: Outcome['status']) => outcomes.filter((each) => each.status === status).length;
  const counts = { made: count('made'), kept: count('kept'), refused: count('refused') };
  if (json) print(jsonText(outcomes, counts, folder));
  else {
    const refused = outcomes.filter(({ status }) => status === 'refused');
    const lines = refused.flatMap(({ row }) =>
      row.refusal!.says.map((line) => `refused ${row.name}: ${line}`),
    );
    print(
      [
        `${outcomes.length} variants: ${counts.made} made, ${counts.kept} kept, ${counts.refused} refused`,
        ...lines,
        ...summary.map((file) => `wrote ${file}`),
      ].join('\n'),
    );
  }
  if (outcomes.some(({ fault }) => fault)) return FAULT;
  return counts.refused ? STOPPED : MADE;
}

function jsonText(outcomes: readonly Outcome[], counts: object, folder: string): string {
  const variants = outcomes.map(({ status, row: { name, files, refusal } }) => ({
    name,
    status,
    files: files.map((file) => join(folder, file)),
    refusal,
  }));
  return JSON.stringify({ ...counts, variants });
}

/** The file's data; a tolerance from the command line stands in it too, so that a wrong one is refused once for all. */
function dataOf(path: string, tolerance: string | undefined): unknown {
  const data = readDataFile(path);
  return tolerance === undefined || !isMapping(data)
    ? data
    : { ...data, tolerance: typedTolerance(tolerance) };
}

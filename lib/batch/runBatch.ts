import { mkdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Tinypool } from 'tinypool';
import { problemOf, Refusal, refuse, unlessRefused } from '../refusal.js';
import type { Profile } from '../spec/profileFile.js';
import type { BatchRow } from '../write/batchPage.js';
import { checkFolder } from '../write/files.js';
import type { Format } from '../write/formats.js';
import { clearLeftovers, type Say } from '../write/leftovers.js';
import { outOfMemory, scarcity } from '../write/plainReason.js';
import { saying } from '../write/saying.js';
import { compileInPlace } from './compileInPlace.js';
import { fingerprint } from './fingerprint.js';
import type { VariantResult, VariantTask } from './makeVariant.js';
import type { Batch } from './readBatch.js';
import { emptyRow, refusalOf } from './record.js';
import { filesOf, RECORDS, readRecord } from './records.js';
import { inShard, type Shard } from './shard.js';
import { writeSummary } from './summary.js';
import type { Answer } from './worker.js';

/** How a batch is to be made. */
export interface BatchOptions {
  folder: string;
  /** Workers, each a thread of its own. */
  jobs: number;
  shard: Shard;
  profile: Profile;
  formats: Format[];
  strict: boolean;
  /** Size of a picture of each, pixels [none]. */
  picture?: { width: number; height: number };
  tolerance?: string;
  /** Stops the batch; what is made stays. */
  signal?: AbortSignal;
  /** Told of each variant as it is done. */
  onDone?: (done: Outcome) => void;
  /** Told, a line at a time, of what was found that was not as it should be. */
  say?: Say;
}

/** What came of one variant. */
export interface Outcome {
  status: VariantResult['status'];
  row: BatchRow;
  /** True where cogweave itself failed. */
  fault?: boolean;
}

/** What came of a batch: its variants in the order of the file, and the paths of the summary. */
export interface BatchOutcome {
  outcomes: Outcome[];
  summary: string[];
}

/**
 * Makes the variants of one shard in worker threads, none that is there already, and then the summary of all. A
 * refused variant does not stop the others.
 * @throws Refusal for the parameter `out` where the file system does not allow it, or files went away meanwhile
 * @throws AbortError when stopped
 */
export async function runBatch(batch: Batch, options: BatchOptions): Promise<BatchOutcome> {
  const { folder, shard, say } = options;
  await checkFolder(folder);
  await prepare(folder, say);
  const mine = batch.names.map((_, index) => index).filter((index) => inShard(index, shard));
  const done = new Map<number, Outcome>();
  try {
    await inWorkers(batch, options, mine, done);
  } finally {
    for (const place of [folder, join(folder, RECORDS)]) await clearLeftovers(place, { own: true, say });
  }
  await refuseGone(folder, done.values());
  const summary = await summarise(batch, options, done);
  return { outcomes: mine.map((index) => done.get(index)!), summary };
}

/** Folders are made before the workers begin, so that none takes away what another has just begun to use. */
async function prepare(folder: string, say?: Say): Promise<void> {
  const records = join(folder, RECORDS);
  await checkFolder(records);
  await saying('out', folder, () => mkdir(records, { recursive: true }));
  for (const place of [folder, records]) await clearLeftovers(place, { own: true, say });
}

async function inWorkers(
  batch: Batch,
  options: BatchOptions,
  mine: readonly number[],
  done: Map<number, Outcome>,
): Promise<void> {
  const threads = Math.min(options.jobs, mine.length);
  if (threads === 0) return;
  compileInPlace(threads);
  const pool = new Tinypool({
    filename: new URL('./worker.js', import.meta.url).href,
    runtime: 'worker_threads',
    minThreads: threads,
    maxThreads: threads,
  });
  // What ends one ends all, also a worker that fails while it has no variant which could be refused.
  const failed = new AbortController();
  pool.on('error', (error) => failed.abort(error));
  const signal = AbortSignal.any([failed.signal, ...(options.signal ? [options.signal] : [])]);
  const queue = mine.values();
  const runner = async () => {
    for (const index of queue) {
      signal.throwIfAborted();
      const outcome = await outcomeOf(pool, taskOf(batch, options, index), { ...options, signal });
      done.set(index, outcome);
      options.onDone?.(outcome);
    }
  };
  const failing = (error: unknown) => {
    failed.abort(error);
    throw error;
  };
  try {
    await Promise.all(Array.from({ length: threads }, () => runner().catch(failing)));
  } finally {
    // The pool's own way to end trips over workers that fail meanwhile.
    if (failed.signal.aborted) await Promise.all(pool.threads.map((thread) => thread.terminate()));
    else await pool.destroy();
  }
}

async function outcomeOf(
  pool: Tinypool,
  task: VariantTask,
  { signal, say = () => {} }: BatchOptions,
): Promise<Outcome> {
  let answer: Answer;
  try {
    answer = await pool.run(task, { signal });
  } catch (error) {
    signal?.throwIfAborted();
    // Memory may do for smaller ones; of anything else that is scarce there is no more for the next.
    const memory = outOfMemory(error);
    if (!memory && scarcity(error)) throw error;
    const what = (error instanceof Error ? error.message : String(error)).split('\n')[0];
    const rule = memory ?? `internal error: ${what} (a fault of cogweave, not of the file; please report it)`;
    const refusal = refusalOf([
      memory
        ? problemOf('out-of-memory', 'memory', task.name, rule)
        : problemOf('internal-error', 'file', task.name, rule),
    ]);
    const row: BatchRow = { ...emptyRow(task.name, task.overrides), status: 'refused', refusal };
    return { status: 'refused', row, fault: !memory };
  }
  if ('problems' in answer) throw new Refusal(answer.problems);
  answer.said.forEach(say);
  const { fingerprint: _, written: __, ...row } = answer.record;
  return { status: answer.status, row };
}

function taskOf(batch: Batch, options: BatchOptions, index: number): VariantTask {
  const { folder, profile, formats, strict, picture, tolerance } = options;
  const [name, overrides] = [batch.names[index], batch.variants.at(index)];
  return { folder, name, data: batch.data, overrides, profile, formats, strict, picture, tolerance };
}

/** A summary must not vouch for files that someone else removed meanwhile, alone or with their folder. */
async function refuseGone(folder: string, outcomes: Iterable<Outcome>): Promise<void> {
  const gone: string[] = [];
  for (const { row } of outcomes) {
    const files = row.files.map((name) => ({ name }));
    if ((await goneOf(folder, files)).length) gone.push(row.name);
  }
  if (!gone.length) return;
  const which = gone.length > 1 ? `${gone[0]} and ${gone.length - 1} more` : gone[0];
  const rule = `files were removed while the batch ran: ${which}; the same command makes them again`;
  refuse('removed', 'out', folder, rule);
}

/**
 * Writes the summary of every variant, those of other shards from their records. Shards that end at the same time
 * may each miss the other's last ones; whoever writes last looks again, so the last summary is whole.
 */
async function summarise(batch: Batch, options: BatchOptions, done: Map<number, Outcome>): Promise<string[]> {
  const { folder } = options;
  for (let rows = await rowsOf(batch, options, done); ; ) {
    const written = await writeSummary(folder, batch.name, batch.variants.paths, rows);
    if (options.shard.count === 1) return written;
    const again = await rowsOf(batch, options, done);
    if (again.every(({ status }, i) => status === rows[i].status)) return written;
    rows = again;
  }
}

async function rowsOf(batch: Batch, options: BatchOptions, done: Map<number, Outcome>): Promise<BatchRow[]> {
  const rows: BatchRow[] = [];
  const { say = () => {} } = options;
  for (const index of batch.names.keys())
    rows.push(done.get(index)?.row ?? (await otherRow(taskOf(batch, options, index), say)));
  return rows;
}

/** The row of a variant of another shard: what its record says, where that is of the same parameters and its files are there. */
async function otherRow(task: VariantTask, say: Say): Promise<BatchRow> {
  const missing = emptyRow(task.name, task.overrides);
  const record = readRecord(task.folder, task.name, filesOf(task), say);
  if (!record || record.fingerprint !== (await expected(task))) return missing;
  const gone = await goneOf(task.folder, record.written);
  if (gone.length) {
    say(`${task.name} counts as missing: ${gone.join(', ')} gone, or not as long as written`);
    return missing;
  }
  const { fingerprint: _, written: __, ...row } = record;
  return { ...row, overrides: task.overrides };
}

/** Those of some files that are not there, or of another length where that is known. */
async function goneOf(folder: string, files: readonly { name: string; bytes?: number }[]): Promise<string[]> {
  const found = await Promise.all(files.map(({ name }) => stat(join(folder, name)).catch(() => undefined)));
  const isThere = (i: number) => found[i]?.isFile() && found[i].size === (files[i].bytes ?? found[i].size);
  return files.flatMap(({ name }, i) => (isThere(i) ? [] : [name]));
}

/** Of other shards' variants alone: what it takes to read parameters whole is loaded for them, and by the workers. */
async function expected(task: VariantTask): Promise<string | null> {
  const { specOf } = await import('./makeVariant.js');
  return unlessRefused(() => fingerprint(specOf(task), task), null);
}

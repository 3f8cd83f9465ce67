import { unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal } from '../refusal.js';
import { digestOf, type FileRecord } from '../write/digests.js';
import { writeFiles } from '../write/files.js';
import { type Format, setFiles } from '../write/formats.js';
import type { Say } from '../write/leftovers.js';
import { textAt } from '../write/readText.js';
import { saying } from '../write/saying.js';
import type { VariantRecord } from './record.js';
import { recordSchema } from './recordSchema.js';

/** Folder of the records, inside that of the batch. */
export const RECORDS = 'records';

/**
 * What an earlier run, or another shard, said of a variant; undefined where there is nothing, or nothing whole.
 * @param files names of all files that are made of it
 * @param say told of a record that is not whole
 */
export function readRecord(
  folder: string,
  name: string,
  files: readonly string[],
  say: Say,
): VariantRecord | undefined {
  const path = pathOf(folder, name);
  try {
    const text = textAt('out', path);
    if (text === undefined) return undefined;
    const record = JSON.parse(text);
    // As it stands, since what the schema gives back has its keys in another order.
    if (recordSchema(name, files).safeParse(record).success) return record;
  } catch (error) {
    if (!(error instanceof Refusal || error instanceof SyntaxError)) throw error;
  }
  say(`${path} is not a whole record; it counts for nothing, and ${name} is to be made again`);
}

/**
 * Puts a variant's record in place, whole or not at all. Written when everything else of the variant is there.
 * @throws Refusal where the file system does not allow it
 */
export async function writeRecord(folder: string, record: VariantRecord): Promise<void> {
  const bytes = new TextEncoder().encode(`${JSON.stringify(record, null, 2)}\n`);
  await writeFiles(join(folder, RECORDS), [{ name: `${record.name}.json`, chunks: () => [bytes] }]);
}

/**
 * Takes a record away before its files are replaced, so that it never vouches for others.
 * @throws Refusal where the file system does not allow it
 */
export async function dropRecord(folder: string, name: string): Promise<void> {
  await saying('out', folder, () =>
    unlink(pathOf(folder, name)).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    }),
  );
}

/** Names of all files that are made of a variant. */
export function filesOf({ name, formats, picture }: { name: string; formats: Format[]; picture?: unknown }) {
  return setFiles(name, formats, picture !== undefined);
}

/** Which files of a variant are gone, or do not hold the very bytes that were written. */
export async function notAsWritten(folder: string, files: readonly FileRecord[]): Promise<string[]> {
  const wrong: string[] = [];
  for (const { name, bytes, sha256 } of files)
    if ((await digestOf(join(folder, name), bytes)) !== sha256) wrong.push(name);
  return wrong;
}

function pathOf(folder: string, name: string): string {
  return join(folder, RECORDS, `${name}.json`);
}

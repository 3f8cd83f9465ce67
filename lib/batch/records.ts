import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { type OutputFile, writeFiles } from '../write/files.js';
import type { FileRecord, VariantRecord } from './record.js';

/** Folder of the records, inside that of the batch. */
export const RECORDS = 'records';

/** What an earlier run, or another shard, said of a variant; undefined where there is nothing that can be read. */
export async function readRecord(folder: string, name: string): Promise<VariantRecord | undefined> {
  try {
    const record = JSON.parse(await readFile(pathOf(folder, name), 'utf8'));
    return isRecord(record, name) ? record : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Puts a variant's record in place, whole or not at all. Written when everything else of the variant is there.
 * @throws Refusal where the file system does not allow it
 */
export async function writeRecord(folder: string, record: VariantRecord): Promise<void> {
  const bytes = new TextEncoder().encode(`${JSON.stringify(record, null, 2)}\n`);
  await writeFiles(join(folder, RECORDS), [{ name: `${record.name}.json`, chunks: () => [bytes] }]);
}

/** Takes a record away before its files are replaced, so that it never vouches for others. */
export async function dropRecord(folder: string, name: string): Promise<void> {
  await rm(pathOf(folder, name), { force: true });
}

/** Whether the files of a variant are all there, with the very bytes that were written. */
export async function allThere(folder: string, files: readonly FileRecord[]): Promise<boolean> {
  for (const file of files) {
    const path = join(folder, file.name);
    const found = await stat(path).catch(() => undefined);
    if (!found?.isFile() || found.size !== file.bytes) return false;
    const sum = createHash('sha256');
    try {
      await pipeline(createReadStream(path), sum);
    } catch {
      return false;
    }
    if (sum.digest('hex') !== file.sha256) return false;
  }
  return true;
}

/** The same file, which tells `done` how long it was and its digest once it has been written. */
export function watched(file: OutputFile, done: (record: FileRecord) => void): OutputFile {
  return {
    name: file.name,
    *chunks() {
      const sum = createHash('sha256');
      let bytes = 0;
      for (const chunk of file.chunks()) {
        sum.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
      done({ name: file.name, bytes, sha256: sum.digest('hex') });
    },
  };
}

function pathOf(folder: string, name: string): string {
  return join(folder, RECORDS, `${name}.json`);
}

/** Enough of a look to know a record from anything else that may lie there. */
function isRecord(value: Partial<VariantRecord> | null, name: string): value is VariantRecord {
  return (
    value?.name === name &&
    (value.status === 'made' || value.status === 'refused') &&
    Array.isArray(value.written) &&
    value.written.every(({ name: file }) => typeof file === 'string' && file.startsWith(`${name}.`))
  );
}

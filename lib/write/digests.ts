import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import * as z from 'zod';
import type { OutputFile } from './files.js';
import { textAt } from './readText.js';

/** A file as it was written. */
export interface FileRecord {
  name: string;
  bytes: number;
  /** SHA-256, hexadecimal. */
  sha256: string;
}

/** Name of a file and its SHA-256, hexadecimal: what a sheet says under `digests` of every other file of its set. */
export type Digests = Record<string, string>;

/** A plain file name: it leads nowhere else. */
const fileName = z.string().refine((name) => name !== '' && name !== '..' && basename(name) === name);
/** A file as a record or sheet may speak of it. */
export const fileRecordSchema = z.object({
  name: fileName,
  bytes: z.int().nonnegative(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});
const sheetSchema = z.object({
  digests: z
    .record(fileName, fileRecordSchema.shape.sha256)
    // A sheet that lists nothing would vouch for whatever lies there.
    .refine((digests) => Object.keys(digests).length > 0),
});

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

/**
 * SHA-256 of the file at a path, hexadecimal; undefined where no file is there, or none that can be read.
 * @param bytes length that it must have to be looked at [any]
 */
export async function digestOf(path: string, bytes?: number): Promise<string | undefined> {
  const found = await stat(path).catch(() => undefined);
  if (!found?.isFile() || (bytes !== undefined && found.size !== bytes)) return undefined;
  const sum = createHash('sha256');
  try {
    await pipeline(createReadStream(path), sum);
  } catch {
    return undefined;
  }
  return sum.digest('hex');
}

/** What the sheet at a path lists; undefined where there is none, or none that lists its files. */
export function digestsAt(path: string): Digests | undefined {
  try {
    return sheetSchema.safeParse(JSON.parse(textAt('sheet', path) ?? '')).data?.digests;
  } catch {
    return undefined;
  }
}

/** Whether the files that a sheet lists are all there, with the very bytes that it speaks of. */
export async function isWhole(folder: string, digests: Digests): Promise<boolean> {
  for (const [name, sha256] of Object.entries(digests))
    if ((await digestOf(join(folder, name))) !== sha256) return false;
  return true;
}

/** Of the files that a sheet lists, those that are there with other bytes than it speaks of. */
export async function changedFiles(folder: string, digests: Digests): Promise<string[]> {
  const changed: string[] = [];
  for (const [name, sha256] of Object.entries(digests)) {
    const found = await digestOf(join(folder, name));
    if (found !== undefined && found !== sha256) changed.push(name);
  }
  return changed;
}

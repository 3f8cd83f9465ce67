import { access, constants, mkdir, open, rename, rmdir, stat, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { refuse } from '../refusal.js';
import { clearLeftoversOnce, type Say, temporaryNames } from './leftovers.js';
import { saying } from './saying.js';

/** A file to be written: its name, and its contents piece by piece, made when they are asked for. */
export interface OutputFile {
  name: string;
  chunks(): Iterable<Uint8Array>;
}

/** How files are written. */
export interface WriteOptions {
  /** Stops the writing and takes back what was begun. */
  signal?: AbortSignal;
  /** Told what was found half done by processes that ended, and set right. */
  say?: Say;
}

/**
 * Refuses a folder that could not be written to: not a folder, no permission, or (where it does not exist yet)
 * not to be made. Changes nothing.
 * @throws Refusal for the parameter `out`
 */
export async function checkFolder(folder: string): Promise<void> {
  await saying('out', folder, async () => {
    const existing = await nearestExisting(folder);
    if (!(await stat(existing)).isDirectory())
      refuse('in-the-way', 'out', folder, notAFolder(folder, existing));
    await access(existing, constants.W_OK | constants.X_OK);
  });
}

/**
 * Writes files into a folder, all or none: each to a temporary name in that folder first, and only when all are
 * there each to its own name, in the order given. The folder is made where it does not exist, and taken away again on
 * failure. Earlier files of the same names stay as they are until the new ones are whole; what ended processes left goes.
 * Once the first file is replaced nothing is taken back: a later run finishes the rest (`settleHalfReplaced`).
 * @returns the paths written, in the order given
 * @throws Refusal for the parameter `out` where the file system does not allow it
 */
export async function writeFiles(
  folder: string,
  files: readonly OutputFile[],
  { signal, say }: WriteOptions = {},
): Promise<string[]> {
  return saying('out', folder, async () => {
    const made: string[] = [];
    const temporary: string[] = [];
    const temporaryName = temporaryNames();
    let replaced = 0;
    try {
      await makeFolders(folder, made);
      await clearLeftoversOnce(folder, say);
      for (const file of files) {
        const path = join(folder, temporaryName(file.name));
        temporary.push(path);
        await writeWhole(path, file, signal);
      }
      const targets = files.map(({ name }) => join(folder, name));
      await refuseOthers(targets);
      signal?.throwIfAborted();
      for (; replaced < targets.length; replaced++) await rename(temporary[replaced], targets[replaced]);
      return targets;
    } finally {
      if (!replaced) await takeBack(temporary, made);
    }
  });
}

async function writeWhole(path: string, file: OutputFile, signal?: AbortSignal): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    for (const chunk of file.chunks()) {
      signal?.throwIfAborted();
      await handle.writeFile(chunk);
    }
    // A name must not point at contents that a power cut could still lose.
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Renaming onto a folder fails half way through a row of files, and onto a device takes that away: met before the first one. */
async function refuseOthers(targets: readonly string[]): Promise<void> {
  for (const target of targets) {
    const found = await stat(target).catch(() => undefined);
    if (!found || found.isFile()) continue;
    const rule = `a ${found.isDirectory() ? 'folder' : 'device or pipe'} of this name stands in the way`;
    refuse('in-the-way', 'out', target, rule);
  }
}

/**
 * Makes the folders that are missing, one by one, and adds them to `made`, the innermost last. (Node's own
 * recursive form never returns on file systems such as /proc, which deny a new folder by saying it has no parent.)
 */
async function makeFolders(folder: string, made: string[]): Promise<void> {
  const existing = await nearestExisting(folder);
  const missing: string[] = [];
  for (let at = folder; at !== existing; at = dirname(at)) missing.unshift(at);
  for (const path of missing) if (await makeFolder(path)) made.push(path);
}

/** Whether the folder was made here; not where another writer was first. */
async function makeFolder(path: string): Promise<boolean> {
  try {
    await mkdir(path);
    return true;
  } catch (error) {
    const found = await stat(path).catch(() => undefined);
    if (found?.isDirectory()) return false;
    throw error;
  }
}

/** Removes temporary files, then the folders that were made for them, from the inside out. */
async function takeBack(paths: readonly string[], folders: readonly string[]): Promise<void> {
  for (const path of paths) await unlink(path).catch(() => {});
  for (const folder of folders.toReversed()) await rmdir(folder).catch(() => {});
}

async function nearestExisting(folder: string): Promise<string> {
  for (let at = folder; ; at = dirname(at)) {
    const found = await stat(at).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
    if (found || dirname(at) === at) return at;
  }
}

function notAFolder(folder: string, existing: string): string {
  return folder === existing ? 'is a file, not a folder' : `${existing} is a file, not a folder`;
}

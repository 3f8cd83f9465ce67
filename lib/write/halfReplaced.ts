import { rename } from 'node:fs/promises';
import { join } from 'node:path';
import { type Digests, digestOf, digestsAt, isWhole } from './digests.js';
import type { Say } from './leftovers.js';

const SHEET = '.sheet.json';

/**
 * Sets right what an ended process may have been replacing: the files of one set, the sheet that lists their digests
 * last. Since the sheet is written only when all else is whole, and replaced only when all else is replaced, its
 * temporary file tells all: with some files replaced and the rest at hand the work is finished; with none replaced, or
 * a whole set in place, nothing is changed. Whatever temporary files remain are the caller's to remove.
 * @param files temporary name of each file of one writing, by the name that it was to get
 * @param say told what was done
 */
export async function settleHalfReplaced(
  folder: string,
  files: ReadonlyMap<string, string>,
  say: Say = () => {},
): Promise<void> {
  const sheet = [...files.keys()].find((name) => name.endsWith(SHEET));
  const digests = sheet && digestsAt(join(folder, files.get(sheet)!));
  if (!sheet || !digests) return;
  const name = sheet.slice(0, -SHEET.length);
  const inPlace = digestsAt(join(folder, sheet));
  if (inPlace && (await isWhole(folder, inPlace)))
    return say(
      `${name}: its new files, left by a process that ended before it replaced the old ones, are taken away`,
    );
  const { replaced, waiting, lost } = await sorted(folder, files, digests);
  if (!replaced.length) return;
  if (lost.length)
    return say(
      `${name}: a process ended while it replaced the files, and ${lost.join(', ')} cannot be had any more: make the set again`,
    );
  for (const each of [...waiting, sheet]) await renamed(join(folder, files.get(each)!), join(folder, each));
  say(`${name}: a process ended while it replaced the files; the rest is replaced now`);
}

/** Which of the listed files stand in place as the new sheet says, wait under their temporary names, or do neither. */
async function sorted(folder: string, files: ReadonlyMap<string, string>, digests: Digests) {
  const found = { replaced: [] as string[], waiting: [] as string[], lost: [] as string[] };
  for (const [name, sha256] of Object.entries(digests)) {
    const temporary = files.get(name);
    const there = temporary !== undefined && (await digestOf(join(folder, temporary))) === sha256;
    const state = there ? 'waiting' : (await digestOf(join(folder, name))) === sha256 ? 'replaced' : 'lost';
    found[state].push(name);
  }
  return found;
}

/** Another process may be finishing the same: whoever comes second finds nothing left to rename. */
async function renamed(from: string, to: string): Promise<void> {
  await rename(from, to).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
  });
}

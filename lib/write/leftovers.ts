import { readdir, stat, unlink } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { settleHalfReplaced } from './halfReplaced.js';
import { hasEnded, isOwn, markOf, markPattern, markText, randomDigits, thisProcess } from './processMark.js';

/** `.NAME.PROCESS-WRITING.part` */
const PATTERN = new RegExp(`^\\.(.+)\\.((${markPattern})-[0-9a-z]{4})\\.part$`, 's');
/** Where it cannot be known whether a process has ended, its files are left over once nothing touched them this long. */
const DAY_MS = 24 * 3600 * 1000;

/** Told, a line at a time, of what was found and set right on the way. */
export type Say = (words: string) => void;

/** Temporary names for the files of one writing, which tell whose they are and that they belong together. */
export function temporaryNames(): (name: string) => string {
  const writing = `${markText(thisProcess)}-${randomDigits(4)}`;
  return (name) => `.${name}.${writing}.part`;
}

/**
 * Removes temporary files that ended processes left in a folder; where one was replacing files meanwhile, that is
 * finished or undone. Those of running processes stay.
 * @param own whether files of this very process are left over too: true before it writes, and once it has ended writing
 */
export async function clearLeftovers(
  folder: string,
  { own = false, say }: { own?: boolean; say?: Say } = {},
): Promise<void> {
  const writings = new Map<string, Map<string, string>>();
  for (const temporary of await readdir(folder).catch(() => [] as string[])) {
    const [, name, writing] = PATTERN.exec(temporary) ?? [];
    if (name === undefined) continue;
    const files = writings.get(writing) ?? new Map<string, string>();
    writings.set(writing, files.set(name, temporary));
  }
  for (const [writing, files] of writings) {
    if (!(await isLeftOver(folder, writing, [...files.values()], own))) continue;
    await settleHalfReplaced(folder, files, say);
    for (const temporary of files.values()) await unlink(join(folder, temporary)).catch(() => {});
  }
}

/** Folders that this process, or this thread of it, has looked through. */
const lookedThrough = new Set<string>();

/** `clearLeftovers` of other processes, the first time that it is asked for a folder: a batch writes into one a thousand times. */
export async function clearLeftoversOnce(folder: string, say?: Say): Promise<void> {
  const path = resolve(folder);
  if (lookedThrough.has(path)) return;
  lookedThrough.add(path);
  await clearLeftovers(path, { say });
}

async function isLeftOver(folder: string, writing: string, files: string[], own: boolean): Promise<boolean> {
  const process = markOf(writing.slice(0, writing.lastIndexOf('-')));
  if (!process) return false;
  if (isOwn(process)) return own;
  return hasEnded(process) ?? (await untouched(folder, files));
}

/** The youngest counts: a large file may be written for hours, and those before it belong to it. */
async function untouched(folder: string, files: string[]): Promise<boolean> {
  const found = await Promise.all(files.map((file) => stat(join(folder, file)).catch(() => undefined)));
  return Math.max(...found.map((each) => each?.mtimeMs ?? 0)) < Date.now() - DAY_MS;
}

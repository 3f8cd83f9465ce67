import { createHash, randomBytes } from 'node:crypto';
import { readdir, stat, unlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join, resolve } from 'node:path';

/** Ends every temporary name. */
const ENDING = '.part';
/** `.NAME.HOST-PROCESS-RANDOM.part` */
const PATTERN = /^\..+\.([0-9a-f]{4})-(\d+)-[0-9a-f]{8}\.part$/;
/** Files of a process on another machine cannot be known to be left over, unless nothing has touched them this long. */
const DAY_MS = 24 * 3600 * 1000;

/** A temporary name for a file that is being written, which tells whose it is. */
export function temporaryName(name: string): string {
  return `.${name}.${host()}-${process.pid}-${randomBytes(4).toString('hex')}${ENDING}`;
}

/**
 * Removes temporary files that ended processes left in a folder. Those of running processes stay.
 * @param own whether files of this very process are left over too: true before it writes, and once it has ended writing
 */
export async function clearLeftovers(folder: string, own = false): Promise<void> {
  const names = await readdir(folder).catch(() => [] as string[]);
  for (const name of names)
    if (await isLeftOver(folder, name, own)) await unlink(join(folder, name)).catch(() => {});
}

/** Folders that this process, or this thread of it, has looked through. */
const lookedThrough = new Set<string>();

/** `clearLeftovers` of other processes, the first time that it is asked for a folder: a batch writes into one a thousand times. */
export async function clearLeftoversOnce(folder: string): Promise<void> {
  const path = resolve(folder);
  if (lookedThrough.has(path)) return;
  lookedThrough.add(path);
  await clearLeftovers(path);
}

async function isLeftOver(folder: string, name: string, own: boolean): Promise<boolean> {
  const [, machine, id] = PATTERN.exec(name) ?? [];
  if (machine === undefined) return false;
  if (machine === host()) return Number(id) === process.pid ? own : !isRunning(Number(id));
  const found = await stat(join(folder, name)).catch(() => undefined);
  return found !== undefined && Date.now() - found.mtimeMs > DAY_MS;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function host(): string {
  return createHash('sha256').update(hostname()).digest('hex').slice(0, 4);
}

import { open, readFile, unlink } from 'node:fs/promises';
import { refuse } from '../../spec/refusal.js';
import { plainReason } from '../plainReason.js';

/** How long another writer is waited for, ms. */
const PATIENCE = 10_000;
/** Longest pause between two tries, ms. */
const PAUSE = 40;

/**
 * Does work while no one else does work under the same lock: a file PATH.lock that only one can make. A lock that
 * was left behind is never taken away by itself, since that could not be told from one just made.
 * @param parameter what gave the path, for refusals
 * @throws Refusal where the lock is not free within `patience` ms, or cannot be made
 */
export async function withLock<T>(
  parameter: string,
  path: string,
  work: () => Promise<T>,
  patience = PATIENCE,
): Promise<T> {
  const lock = `${path}.lock`;
  const until = Date.now() + patience;
  while (!(await taken(parameter, path, lock))) {
    if (Date.now() > until)
      refuse(
        parameter,
        path,
        `is locked by another cogweave (${await holder(lock)}); delete ${lock} if none is running`,
      );
    await new Promise((resolve) => setTimeout(resolve, PAUSE * (0.25 + Math.random())));
  }
  try {
    return await work();
  } finally {
    await unlink(lock).catch(() => {});
  }
}

async function taken(parameter: string, path: string, lock: string): Promise<boolean> {
  try {
    const handle = await open(lock, 'wx');
    await handle.writeFile(`process ${process.pid}\n`).finally(() => handle.close());
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    const reason = plainReason(error);
    if (reason) refuse(parameter, path, `cannot be written: ${reason}`);
    throw error;
  }
}

async function holder(lock: string): Promise<string> {
  const text = await readFile(lock, 'utf8').catch(() => '');
  return text.trim() || 'process unknown';
}

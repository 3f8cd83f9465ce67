import { createHash } from 'node:crypto';
import { link, lstat, open, stat, unlink, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { refuse } from '../../refusal.js';
import type { WriteOptions } from '../files.js';
import { temporaryNames } from '../leftovers.js';
import { hasEnded, markOf, markPattern, markText, randomDigits, thisProcess } from '../processMark.js';
import { textAt } from '../readText.js';
import { saying } from '../saying.js';

/** How long another writer is waited for, ms. */
const PATIENCE = 10_000;
/** Longest pause between two tries, ms. */
const PAUSE = 40;
/**
 * Where it cannot be known whether the holder has ended, its lock is taken over at this age, ms: adding takes a second at
 * most, and clocks of machines that share a disk differ by less.
 */
const ABANDONED = 600_000;

/** How a lock is waited for. */
export interface LockOptions extends WriteOptions {
  /** How long another holder is waited for [10 s], ms. */
  patience?: number;
}

/** Who holds a lock, as it says. */
interface Holder {
  /** No other lock, before or after, has the same. */
  token: string;
  /** For people. */
  who: string;
  /** Why it is left over; undefined where it may be held. */
  ended?: string;
}

/**
 * Does work while no one else does work under the same lock: a file PATH.lock that only one can make, which names its
 * process. The lock of a process that has ended is taken over, with a word; by one of those that wait.
 * @param parameter what gave the path, for refusals
 * @throws Refusal where the lock is not free within `patience` ms, or cannot be made
 */
export async function withLock<T>(
  parameter: string,
  path: string,
  work: () => Promise<T>,
  { patience = PATIENCE, signal, say = () => {} }: LockOptions = {},
): Promise<T> {
  const lock = `${path}.lock`;
  const until = Date.now() + patience;
  const token = randomDigits(10);
  return saying(parameter, path, async () => {
    while (!(await placed(lock, token))) {
      signal?.throwIfAborted();
      const holder = await holderOf(lock);
      if (holder?.ended && (await removed(lock, holder))) {
        say(`${lock} was left by ${holder.who}, ${holder.ended}; it is taken over`);
        continue;
      }
      const rule = `is locked by another cogweave (${holder?.who ?? UNKNOWN}); delete ${lock} if none is running`;
      if (Date.now() > until) refuse('locked', parameter, path, rule);
      await new Promise((resolve) => setTimeout(resolve, PAUSE * (0.25 + Math.random())));
    }
    try {
      return await work();
    } finally {
      // One that stood still for long may find that its lock is another's by now.
      const holder = await holderOf(lock).catch(() => ({ token }));
      if (holder?.token === token) await unlink(lock).catch(() => {});
    }
  });
}

const UNKNOWN = 'process unknown';

/**
 * Takes away a lock that was left over, unless another is at it or was first. Between looking at a lock and taking it
 * away, another might do both and put its own in the place. So whoever takes a lock away first makes a guard, named
 * after that very lock, and looks again: as long as the guard is there no one else takes that lock away, and any other
 * lock is left alone. A guard whose maker ended is taken away in the same manner.
 */
async function removed(lock: string, { token }: Holder): Promise<boolean> {
  const guard = `${lock}.${token}`;
  if (!(await placed(guard, randomDigits(10)))) {
    const other = await holderOf(guard);
    if (other?.ended) await removed(guard, other);
    return false;
  }
  try {
    if ((await holderOf(lock))?.token !== token) return false;
    await unlink(lock);
    return true;
  } finally {
    await unlink(guard).catch(() => {});
  }
}

/**
 * Makes the lock; false where one is there. It comes with its contents or not at all, so that neither a full disk nor a
 * kill leaves one that names nobody.
 */
async function placed(lock: string, token: string): Promise<boolean> {
  // Most tries find another's, which needs no writing.
  if (await lstat(lock).catch(() => undefined)) return false;
  const text = `process ${process.pid}\n${markText(thisProcess)} ${token}\n`;
  const temporary = join(dirname(lock), temporaryNames()(basename(lock)));
  try {
    await writeFile(temporary, text, { flag: 'wx' });
    await link(temporary, lock);
    return true;
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException;
    // A network file system may have made the link and say so only by refusing to make it again.
    if (code === 'EEXIST') return (await holderOf(lock))?.token === token;
    if (['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK'].includes(code))
      return placedWithoutLink(lock, text);
    throw error;
  } finally {
    await unlink(temporary).catch(() => {});
  }
}

/** For file systems without links, such as FAT: for a moment the lock is there and names nobody. */
async function placedWithoutLink(lock: string, text: string): Promise<boolean> {
  try {
    const handle = await open(lock, 'wx');
    try {
      await handle.writeFile(text);
    } catch (error) {
      await unlink(lock).catch(() => {});
      throw error;
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** Who holds a lock; undefined where there is none. */
async function holderOf(lock: string): Promise<Holder | undefined> {
  const found = await stat(lock).catch(() => undefined);
  const text = found && textAt('lock', lock);
  if (!found || text === undefined) return undefined;
  const who = text.split('\n')[0].trim() || UNKNOWN;
  const [, marked, given] = new RegExp(`^(${markPattern}) ([0-9a-z]{10})$`, 'm').exec(text) ?? [];
  const mark = marked === undefined ? undefined : markOf(marked);
  const token =
    given ?? createHash('sha256').update(`${text} ${found.ino} ${found.mtimeMs}`).digest('hex').slice(0, 10);
  const known = mark && hasEnded(mark);
  if (known) return { token, who, ended: 'which has ended' };
  const age = Date.now() - found.mtimeMs;
  if (known === undefined && age > ABANDONED)
    return { token, who, ended: `of which nothing is known here, ${Math.round(age / 60_000)} minutes ago` };
  return { token, who };
}

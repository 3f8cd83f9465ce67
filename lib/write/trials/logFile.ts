import { realpath } from 'node:fs/promises';
import type { Trial } from '../../fit/trials/trialSchema.js';
import type { WriteOptions } from '../files.js';
import { writeNew } from '../planWrite.js';
import { readText, textAt } from '../readText.js';
import { addToLog } from './addToLog.js';
import { withLock } from './lock.js';
import { readLog } from './readLog.js';

/**
 * The trials of the log at a path.
 * @throws Refusal where there is none, or where it is damaged, with the line
 */
export function readLogFile(path: string): Trial[] {
  return readLog(readText('log', path));
}

/**
 * Adds a trial at the end of the log at a path, which is made where there is none. The log is replaced whole or not at
 * all; others that add at the same time wait for each other.
 * @param options told where a lock of an ended process was taken over
 * @returns how many trials it holds then
 * @throws Refusal where the log is damaged, which is then left as it is, or cannot be written
 */
export async function addToLogFile(path: string, trial: Trial, options: WriteOptions = {}): Promise<number> {
  // What is no log is refused before a lock is put beside it.
  readLog(textAt('log', path) ?? '');
  // A link keeps pointing at the log.
  const target = await realpath(path).catch(() => path);
  const work = async () => {
    const text = addToLog(textAt('log', target), trial, /\.json$/i.test(target));
    await writeNew('log', target, text, true, options);
    return readLog(text).length;
  };
  return withLock('log', target, work, options);
}

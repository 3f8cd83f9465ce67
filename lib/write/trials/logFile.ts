import { readFile, realpath, stat } from 'node:fs/promises';
import type { Trial } from '../../fit/trials/trialSchema.js';
import { refuse } from '../../spec/refusal.js';
import { plainReason } from '../plainReason.js';
import { writeNew } from '../planWrite.js';
import { addToLog } from './addToLog.js';
import { withLock } from './lock.js';
import { readLog } from './readLog.js';

/** Logs are read up to this size, bytes. */
const MOST_BYTES = 1_000_000;

/**
 * The trials of the log at a path.
 * @throws Refusal where there is none, or where it is damaged, with the line
 */
export async function readLogFile(path: string): Promise<Trial[]> {
  const text = await textAt('log', path);
  if (text === undefined) refuse('log', path, 'cannot be read: there is no such file or folder');
  return readLog(text);
}

/**
 * Adds a trial at the end of the log at a path, which is made where there is none. The log is replaced whole or not at
 * all; others that add at the same time wait for each other.
 * @returns how many trials it holds then
 * @throws Refusal where the log is damaged, which is then left as it is, or cannot be written
 */
export async function addToLogFile(path: string, trial: Trial): Promise<number> {
  // A link keeps pointing at the log.
  const target = await realpath(path).catch(() => path);
  return withLock('log', target, async () => {
    const text = addToLog(await textAt('log', target), trial, /\.json$/i.test(target));
    await writeNew('log', target, text, true);
    return readLog(text).length;
  });
}

/**
 * The text of a file; undefined where there is none.
 * @param parameter what gave the path, for refusals
 * @throws Refusal for what is no text, too large, or cannot be read
 */
export async function textAt(parameter: string, path: string): Promise<string | undefined> {
  try {
    const { size } = await stat(path);
    if (size > MOST_BYTES) refuse(parameter, path, 'is more than 1 MB');
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    if ((error as NodeJS.ErrnoException).code === 'ERR_ENCODING_INVALID_ENCODED_DATA')
      refuse(parameter, path, 'is not text (UTF-8)');
    const reason = plainReason(error);
    if (reason) refuse(parameter, path, `cannot be read: ${reason}`);
    throw error;
  }
}

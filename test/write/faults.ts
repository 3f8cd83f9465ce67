import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { thisProcess } from '../../lib/write/processMark.js';
import { root } from '../bin/command.js';

/** Whether this system tells processes apart, so that what one left is known at once to be left over; only Linux does. */
export const tellsProcesses = thisProcess.place !== '0';

const hook = join(root, 'test', 'write', 'faultAt.mjs');

/**
 * Starts node on a script so that it is killed, or stands still, at one call of a function of node:fs/promises.
 * @param fault as `faultAt.mjs` reads it
 * @param before words before node, such as those that give it a namespace of its own
 */
export function startWith(
  fault: string,
  words: readonly string[],
  { cwd, before = [] }: { cwd?: string; before?: readonly string[] } = {},
): ChildProcess {
  const [first, ...rest] = [...before, process.execPath, '--import', hook, ...words];
  return spawn(first, rest, { cwd, env: { ...process.env, FAULT_AT: fault } });
}

/** Whether the process was killed by the fault, and not over before it was met. */
export function killedBy(fault: string, words: readonly string[], cwd?: string): Promise<boolean> {
  return new Promise((resolve) => {
    const child = startWith(fault, words, { cwd });
    child.on('close', (_, signal) => resolve(signal === 'SIGKILL'));
  });
}

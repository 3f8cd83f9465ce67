import { constants } from 'node:os';
import type { Check } from '../lib/proof/check.js';
import { describeProblem, problemOf, Refusal } from '../lib/refusal.js';
import { visible, visibleLines } from '../lib/visible.js';
import { plainReason, scarcity } from '../lib/write/plainReason.js';

/** Exit status: made. */
export const MADE = 0;
/** Exit status: stopped by a check. */
export const STOPPED = 1;
/** Exit status: bad input or usage, or a system that does not allow it. */
const REFUSED = 2;
/** Exit status: a fault of cogweave itself. */
export const FAULT = 3;

/** Results go to stdout, what cannot be seen in them written out; in JSON that means the same. */
export function print(text: string): void {
  printPainted(visibleLines(text));
}

/** Results that may be painted, and hold nothing as it stands in a file. */
export function printPainted(text: string): void {
  process.stdout.write(`${text}\n`);
}

/** Everything else goes to stderr. */
export function complain(text: string): void {
  process.stderr.write(`cogweave: ${visible(text)}\n`);
}

/** Progress is for people: only on a terminal. */
export function note(text: string): void {
  if (process.stderr.isTTY) complain(text);
}

/** What a job came to, and the files that it wrote. */
export function printMade(text: string, files: readonly string[]): void {
  printPainted([text, '', ...files.map((file) => `wrote ${visible(file)}`)].join('\n').trimEnd());
}

/** Says why a job stopped, or was made all the same, a line for each failing check, and gives its status. */
export function verdict(blocking: readonly Check[], written: boolean): number {
  if (!blocking.length) return MADE;
  for (const { id, says } of blocking)
    complain(`${written ? 'made all the same, but ' : 'refused by '}${id}: ${says}`);
  return written ? MADE : STOPPED;
}

/** What interrupted the command. */
let stoppedBy: 'SIGINT' | 'SIGTERM' = 'SIGINT';

/** Ends the work tidily when the command is interrupted; before that, an interruption just ends the command. */
export function stopSignal(): AbortSignal {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      stoppedBy = signal;
      stop.abort();
    });
  return stop.signal;
}

/** Exit status of an interrupted command, as shells have it: 130 for SIGINT, 143 for SIGTERM. */
export function interrupted(): number {
  return 128 + constants.signals[stoppedBy];
}

/**
 * Says what ended the command, one line for each problem and never a stack trace, and gives its exit status.
 * @param json print the problems of a refusal as one document too [false]
 */
export function fail(error: unknown, json = false): number {
  if (error instanceof Refusal) {
    if (json) print(JSON.stringify({ problems: error.problems }));
    for (const problem of error.problems) complain(describeProblem(problem));
    return REFUSED;
  }
  if (error instanceof Error && error.name === 'AbortError') {
    complain('interrupted: nothing written');
    return interrupted();
  }
  const scarce = scarcity(error);
  if (scarce) {
    complain(`system: ${scarce}`);
    return REFUSED;
  }
  const what = error instanceof Error ? error.message : String(error);
  complain(`internal error: ${what.split('\n')[0]} (a fault of cogweave, not of the file; please report it)`);
  return FAULT;
}

/**
 * Exit status after stdout or stderr failed; undefined leaves it as it is. A reader that closes early (`| head`)
 * is no fault.
 */
export function streamFault(error: NodeJS.ErrnoException): number | undefined {
  if (error.code === 'EPIPE') return undefined;
  const rule = `cannot be written: ${plainReason(error) ?? error.message}`;
  return fail(new Refusal([problemOf('not-writable', 'output', 'stream', rule)]));
}

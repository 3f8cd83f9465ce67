import { createHash, randomInt } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { getEnvironmentData, setEnvironmentData } from 'node:worker_threads';

/** A process as what it leaves behind names it, so that no other is ever taken for it, on whatever machine. */
export interface ProcessMark {
  /** Boot of the machine and process namespace, hashed; `0` where the system does not tell. */
  place: string;
  id: number;
  /** When it started: clock ticks since the boot, in base 36; `0` where the system does not tell. */
  start: string;
  /** Random; all threads of a process share it. */
  mark: string;
}

/** Digits of a hash or random number in base 36: 8 hold 41 bits. Names of files have no room for more. */
const PLACE_DIGITS = 8;
const MARK_DIGITS = 6;

/** A mark as it stands in file names and locks. */
export const markPattern = `[0-9a-z]{1,${PLACE_DIGITS}}-\\d{1,10}-[0-9a-z]{1,10}-[0-9a-z]{${MARK_DIGITS}}`;

/** A random number of so many digits in base 36. */
export function randomDigits(digits: number): string {
  return Array.from({ length: digits }, () => randomInt(36).toString(36)).join('');
}

/** This very process. */
export const thisProcess: ProcessMark = {
  place: placeOf(),
  id: process.pid,
  start: statOf('self')?.start ?? '0',
  mark: sharedMark(),
};

/** A mark as text, no more than 31 characters on Linux. */
export function markText({ place, id, start, mark }: ProcessMark): string {
  return [place, id, start, mark].join('-');
}

/** The mark that a text is. */
export function markOf(text: string): ProcessMark | undefined {
  if (!new RegExp(`^${markPattern}$`).test(text)) return undefined;
  const [place, id, start, mark] = text.split('-');
  return { place, id: Number(id), start, mark };
}

/** Whether a mark is of this very process. */
export function isOwn({ place, id, start, mark }: ProcessMark): boolean {
  const own = thisProcess;
  return place === own.place && id === own.id && start === own.start && mark === own.mark;
}

/**
 * Whether a process has ended; undefined where that cannot be known: it is of another machine, an earlier boot or
 * another process namespace (what runs there is not seen from here), or this system does not tell starts.
 */
export function hasEnded(mark: ProcessMark): boolean | undefined {
  if (mark.place === UNKNOWN || mark.place !== thisProcess.place) return undefined;
  const found = statOf(mark.id);
  // A zombie only waits for its parent to take notice.
  if (found) return found.start !== mark.start || /[ZX]/.test(found.state);
  return isHidden(mark.id) ? undefined : true;
}

const UNKNOWN = '0';

/** The kernel's word on boot and namespaces: several containers of one boot share machine and host name, but not these. */
function placeOf(): string {
  try {
    // A /proc of another namespace knows this process by another number, or not at all.
    if (readlinkSync('/proc/self') !== String(process.pid)) return UNKNOWN;
    const spaces = ['pid', 'time'].map((space) => linkAt(`/proc/self/ns/${space}`));
    const all = [readFileSync('/proc/sys/kernel/random/boot_id', 'utf8'), ...spaces].join('\n');
    const bits = createHash('sha256').update(all).digest().readBigUInt64BE();
    return bits.toString(36).padStart(PLACE_DIGITS, '0').slice(-PLACE_DIGITS);
  } catch {
    return UNKNOWN;
  }
}

/** Systems before Linux 5.6 have no time namespaces. */
function linkAt(path: string): string {
  try {
    return readlinkSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
    throw error;
  }
}

/** State and start of a process: fields 3 and 22 of proc(5), counted behind the name, which may hold anything. */
function statOf(id: number | 'self'): { state: string; start: string } | undefined {
  try {
    const text = readFileSync(`/proc/${id}/stat`, 'utf8');
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    return { state: fields[0], start: Number(fields[19]).toString(36) };
  } catch {
    return undefined;
  }
}

/** Whether a process is there that /proc does not show, as it may be mounted. */
function isHidden(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}

function sharedMark(): string {
  const KEY = 'cogweave process mark';
  const found = getEnvironmentData(KEY);
  if (typeof found === 'string') return found;
  const mark = randomDigits(MARK_DIGITS);
  setEnvironmentData(KEY, mark);
  return mark;
}

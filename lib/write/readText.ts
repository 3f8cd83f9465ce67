import { closeSync, constants, fstatSync, openSync, readSync, type Stats } from 'node:fs';
import { refuse } from '../refusal.js';
import { plainReason } from './plainReason.js';

/** As in lib/spec: of whatever file is read, more than this is not even taken in, bytes. */
const MOST_BYTES = 1_000_000;
/** A pipe that gives nothing for this long is given up, ms. */
const PATIENCE = 10_000;
/** Between two looks at a pipe, ms. */
const PAUSE = 20;

/**
 * The text of a file; undefined where there is none. Every file that cogweave reads comes in here, except the
 * digests of what it wrote itself. Pipes are read to their end; devices are refused, as they may have none.
 * @param parameter what gave the path, for refusals
 * @param patience how long a pipe may give nothing, ms
 * @throws Refusal for what is no text (UTF-8), over 1 MB, a folder or device, a pipe that gives nothing, or cannot be read
 */
export function textAt(parameter: string, path: string, patience = PATIENCE): string | undefined {
  const bytes = bytesAt(parameter, path, patience);
  if (bytes === undefined) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    refuse('not-text', parameter, path, 'is not text (UTF-8)');
  }
}

/**
 * The text of a file that must be there.
 * @throws Refusal as `textAt`, and where there is none
 */
export function readText(parameter: string, path: string): string {
  return (
    textAt(parameter, path) ??
    refuse('unreadable', parameter, path, 'cannot be read: there is no such file or folder')
  );
}

function bytesAt(parameter: string, path: string, patience: number): Uint8Array | undefined {
  let handle: number | undefined;
  try {
    // Opening a pipe that nobody writes to would wait for ever.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const found = fstatSync(handle);
    const kind = kindOf(found);
    if (kind) refuse('unreadable', parameter, path, `is ${kind}, not a file`);
    if (found.size > MOST_BYTES) refuse('too-large', parameter, path, 'is more than 1 MB');
    const bytes = new Uint8Array(MOST_BYTES + 1);
    const length = fill(bytes, handle, found.isFIFO() ? patience : 0);
    if (length === undefined)
      refuse('unreadable', parameter, path, `is a pipe that gave nothing for ${patience / 1000} s`);
    if (length > MOST_BYTES) refuse('too-large', parameter, path, 'is more than 1 MB');
    return bytes.subarray(0, length);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    const reason = plainReason(error);
    if (reason) refuse('unreadable', parameter, path, `cannot be read: ${reason}`);
    throw error;
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

function kindOf(found: Stats): string | undefined {
  if (found.isDirectory()) return 'a folder';
  return found.isFile() || found.isFIFO() ? undefined : 'a device';
}

/** Bytes read until the end or until `bytes` is full; undefined where nothing came for `patience` ms. */
function fill(bytes: Uint8Array, handle: number, patience: number): number | undefined {
  let length = 0;
  let until = Date.now() + patience;
  while (length < bytes.length) {
    const read = readSome(handle, bytes.subarray(length));
    if (read) {
      length += read;
      until = Date.now() + patience;
    } else if (read === 0 && (length > 0 || patience === 0)) break;
    else if (Date.now() > until) return undefined;
    // Nothing yet: nobody has opened the other end, or whoever did has not written.
    else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
  }
  return length;
}

/** Bytes read, 0 at the end; undefined where there are none yet. */
function readSome(handle: number, into: Uint8Array): number | undefined {
  try {
    return readSync(handle, into, 0, into.length, null);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EAGAIN') return undefined;
    throw error;
  }
}

import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { asProfile } from '../lib/spec/profileFile.js';
import { readData, readProfile } from '../lib/spec/readSpec.js';
import { refuse } from '../lib/spec/refusal.js';
import { plainReason } from '../lib/write/plainReason.js';

/** As in lib/spec: more than this is not even read. */
const MOST_BYTES = 1_000_000;

/**
 * The data in the parameter file at a path, as they stand there.
 * @throws Refusal where there is no such file, or it is neither YAML nor JSON
 */
export function readDataFile(path: string): unknown {
  return readData(textOf(path));
}

/**
 * The profile in the file at a path, checked.
 * @throws Refusal
 */
export function profileAt(path: string) {
  let text: string;
  try {
    text = textOf(path);
  } catch (error) {
    throw asProfile(error);
  }
  return readProfile(text);
}

function textOf(path: string): string {
  const bytes = readBytes(path);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    refuse('file', path, 'is not text (UTF-8)');
  }
  if (text.trim() === '') refuse('file', path, 'is empty');
  return text;
}

function readBytes(path: string): Uint8Array {
  let handle: number | undefined;
  try {
    handle = openSync(path, 'r');
    if (fstatSync(handle).isDirectory()) refuse('file', path, 'is a folder, not a file');
    const bytes = new Uint8Array(MOST_BYTES + 1);
    let length = 0;
    for (let read = 1; read > 0 && length < bytes.length; length += read)
      read = readSync(handle, bytes, length, bytes.length - length, null);
    if (length > MOST_BYTES) refuse('file', path, 'is more than 1 MB');
    return bytes.subarray(0, length);
  } catch (error) {
    const reason = plainReason(error);
    if (reason) refuse('file', path, `cannot be read: ${reason}`);
    throw error;
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

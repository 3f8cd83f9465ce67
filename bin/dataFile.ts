import { refuse } from '../lib/refusal.js';
import { asProfile } from '../lib/spec/profileFile.js';
import { readData, readProfile } from '../lib/spec/readSpec.js';
import { readText } from '../lib/write/readText.js';

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
  const text = readText('file', path);
  if (text.trim() === '') refuse('empty', 'file', path, 'is empty');
  return text;
}

import { access } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { Refusal, refuse } from '../refusal.js';
import { type WriteOptions, writeFiles } from './files.js';

/**
 * Writes a text to a path, whole or not at all, and never over a file that is there already unless forced.
 * @param parameter what gave the path, for refusals
 * @returns the path
 * @throws Refusal where the file is there already or the file system does not allow it
 */
export async function writeNew(
  parameter: string,
  path: string,
  text: string,
  force: boolean,
  options: WriteOptions = {},
): Promise<string> {
  if (!force && (await exists(path)))
    refuse('in-the-way', parameter, path, 'is there already; give another name, or --force to write over it');
  const file = { name: basename(path), chunks: () => [new TextEncoder().encode(text)] };
  try {
    await writeFiles(dirname(path), [file], options);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const [first, ...rest] = error.problems.map((problem) => ({ ...problem, parameter }));
    throw new Refusal([first, ...rest]);
  }
  return path;
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Digests, digestOf, digestsAt, type FileRecord, watched } from './digests.js';
import { type OutputFile, type WriteOptions, writeFiles } from './files.js';
import { endings } from './formats.js';
import { clearLeftoversOnce, type Say } from './leftovers.js';

/**
 * Writes the files of a set and then its sheet, NAME.sheet.json, which lists the SHA-256 of each: whoever holds a file
 * against the sheet sees whether it is of this set. The sheet is written and replaced last.
 * @param options with `say`, what lies in the folder under the set's name without being the set's is told
 * @returns paths, and length and digest, of all files, the sheet the last; the sheet as it was written
 * @throws Refusal for the parameter `out` where the file system does not allow it
 */
export async function writeSet<Sheet extends { name: string }>(
  folder: string,
  sheet: Sheet,
  files: readonly OutputFile[],
  options: WriteOptions,
): Promise<{ files: string[]; written: FileRecord[]; sheet: Sheet & { digests: Digests } }> {
  const written: FileRecord[] = [];
  let vouching = { ...sheet, digests: {} as Digests };
  const last: OutputFile = {
    name: `${sheet.name}.sheet.json`,
    *chunks() {
      vouching = { ...sheet, digests: Object.fromEntries(written.map(({ name, sha256 }) => [name, sha256])) };
      yield new TextEncoder().encode(`${JSON.stringify(vouching, null, 2)}\n`);
    },
  };
  const names = files.map(({ name }) => name);
  // A set half replaced is set right before it is looked at.
  await clearLeftoversOnce(folder, options.say);
  if (options.say) await sayReplaced(folder, last.name, names, options.say);
  const all = [...files, last].map((file) => watched(file, (record) => written.push(record)));
  const paths = await writeFiles(folder, all, options);
  if (options.say) await sayStrangers(folder, sheet.name, names, options.say);
  return { files: paths, written, sheet: vouching };
}

/** Files about to be replaced that are not those of the sheet beside them: somebody may miss them. */
async function sayReplaced(folder: string, sheet: string, names: readonly string[], say: Say): Promise<void> {
  const digests = digestsAt(join(folder, sheet));
  if (!digests) return;
  for (const name of names) {
    const found = await digestOf(join(folder, name));
    if (found !== undefined && found !== digests[name])
      say(`${join(folder, name)} was not the file that ${sheet} beside it speaks of; it is replaced`);
  }
}

/** Files that stay under the set's name although its sheet does not speak of them. */
async function sayStrangers(
  folder: string,
  name: string,
  written: readonly string[],
  say: Say,
): Promise<void> {
  const others = endings.map((ending) => `${name}.${ending}`).filter((each) => !written.includes(each));
  for (const other of others) {
    const path = join(folder, other);
    if (await stat(path).catch(() => undefined))
      say(`${path} stays from before: ${name}.sheet.json does not speak of it`);
  }
}

import type { Check } from '../proof/check.js';
import { proveSet } from '../proof/proveSet.js';
import type { Sheet } from '../proof/sheetTypes.js';
import type { Additions } from '../solid/additions.js';
import type { Spec } from '../spec/types.js';
import { blockingChecks } from './blocking.js';
import type { FileRecord } from './digests.js';
import type { Format } from './formats.js';
import type { Say } from './leftovers.js';

/** What is to be written, where, and what stops it; with `join` or `cut`, what a script adds to the parts. */
export interface MakeOptions extends Additions {
  /** Folder that receives the files; made where it does not exist. */
  folder: string;
  /** Formats of the parts [all]; drawing and sheets are always written. */
  formats?: readonly Format[];
  /** Write a shaded picture, NAME.png, of this size in pixels [none]. */
  picture?: { width: number; height: number };
  /** Write even though checks fail [false]. */
  force?: boolean;
  /** Let failing checks of level `should` stop the job too [false]. */
  strict?: boolean;
  /** Asked when writing begins; what it gives stops the writing and takes back what was begun. */
  signal?: () => AbortSignal;
  /** Told, a line at a time, of what was found in the folder: files that are not their sheet's, or half replaced. */
  say?: Say;
}

/** What came of it. */
export interface Made {
  /** Paths of the files written; none when stopped. */
  files: string[];
  /** The same files with length and digest. */
  written: FileRecord[];
  sheet: Sheet;
  /** The checks that fail and stop the job. */
  blocking: Check[];
}

/**
 * Builds and proves a set and writes it: NAME.stl, NAME.3mf, NAME.svg, NAME.sheet.json, NAME.sheet.html and,
 * where asked for, NAME.png, all or none of them. The sheet lists the SHA-256 of all others under `digests`. Nothing is written where a check stops the job, unless forced.
 * The drawing leaves out what a script adds where growth or shrinkage is compensated. Needs a file system, which
 * nothing else that the library exports does.
 * @throws Refusal where teeth cannot be made, an addition is wrong or the folder cannot be written
 */
export async function makeSet(spec: Spec, options: MakeOptions): Promise<Made> {
  const { checkFolder } = await import('./files.js');
  const { resultsOf } = await import('./results.js');
  const { writeSet } = await import('./writeSet.js');
  await checkFolder(options.folder);
  const { folder, force = false, strict = false, join, cut, signal, say } = options;
  const { sheet, parts } = await proveSet(spec, { force, join, cut });
  const blocking = blockingChecks(sheet.checks, strict);
  if (blocking.length && !force) return { files: [], written: [], sheet, blocking };
  const results = resultsOf(spec, sheet, parts, options);
  return { ...(await writeSet(folder, sheet, results, { signal: signal?.(), say })), blocking };
}

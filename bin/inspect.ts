import { proveSet } from '../lib/proof/proveSet.js';
import { withTolerance } from '../lib/spec/withTolerance.js';
import { blockingChecks } from '../lib/write/blocking.js';
import { summaryText } from '../lib/write/summary.js';
import { paintFor } from './colours.js';
import { note, print, printPainted, verdict } from './output.js';
import { readSpecFile } from './specFile.js';
import { type Arguments, fileOf } from './usage.js';

/** Flags as they were typed. */
export interface InspectArguments extends Arguments {
  profile?: string;
  tolerance?: string;
  strict?: boolean;
  json?: boolean;
}

/**
 * Builds and proves a set, and prints its sheet.
 * @returns exit status: 1 when a check fails that must hold
 * @throws Refusal for a file that cannot be read or is refused
 */
export function inspect(argv: InspectArguments): number {
  const spec = specOf(argv);
  note(`building and proving ${spec.name} …`);
  const { sheet } = proveSet(spec);
  if (argv.json) print(JSON.stringify(sheet));
  else printPainted(summaryText(sheet, paintFor(process.stdout)));
  return verdict(blockingChecks(sheet.checks, argv.strict ?? false), false);
}

/** The parameters in the file, with what flags say. */
export function specOf(argv: InspectArguments) {
  const spec = readSpecFile(fileOf(argv), argv.profile);
  return argv.tolerance === undefined ? spec : withTolerance(spec, argv.tolerance);
}

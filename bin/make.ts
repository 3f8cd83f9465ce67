import { refuse } from '../lib/refusal.js';
import { readFormats } from '../lib/write/formats.js';
import { makeSet } from '../lib/write/makeSet.js';
import { summaryText } from '../lib/write/summary.js';
import { paintFor } from './colours.js';
import { type InspectArguments, specOf } from './inspect.js';
import { complain, note, print, printMade, stopSignal, verdict } from './output.js';
import { pictureOf } from './picture.js';

/** Flags as they were typed. */
export interface MakeArguments extends InspectArguments {
  out?: string;
  format?: string;
  force?: boolean;
  picture?: boolean;
  'picture-size'?: string;
}

/**
 * Builds, proves and writes a set.
 * @returns exit status: 1 when a check fails that must hold
 * @throws Refusal for flags or a file that are wrong, and a folder that cannot be written
 */
export async function make(argv: MakeArguments): Promise<number> {
  const formats = readFormats(argv.format);
  if (argv.out === undefined) refuse('missing', 'out', undefined, 'is required: the folder for the files');
  const picture = pictureOf(argv);
  const spec = specOf(argv);
  note(`building and proving ${spec.name} …`);
  const { files, sheet, blocking } = await makeSet(spec, {
    folder: argv.out,
    formats,
    picture,
    force: argv.force ?? false,
    strict: argv.strict ?? false,
    signal: stopSignal,
    say: complain,
  });
  if (argv.json) print(JSON.stringify({ files, sheet }));
  else printMade(summaryText(sheet, paintFor(process.stdout)), files);
  return verdict(blocking, files.length > 0);
}

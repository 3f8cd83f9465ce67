import { troubles, troublesFor } from '../lib/fit/troubles.js';
import { troubleText } from '../lib/write/troubleText.js';
import { MADE, print } from './output.js';
import type { Arguments } from './usage.js';

/** The flags of `trouble`. */
export const troubleFlags = {
  json: { type: 'boolean', describe: 'print one JSON document and nothing else' },
} as const;

/** What stands below the flags in the help of `trouble`. */
export const troubleEpilogue = [
  'Without a symptom all are listed. One of these words, or words of the symptom itself:',
  ...troubles.map(({ id, symptom }) => `  ${id}: ${symptom}`),
  '',
  'Examples:',
  '  cogweave trouble wont-turn',
  '  cogweave trouble "teeth skip"',
].join('\n');

/**
 * Prints the troubles that a symptom names, or all of them.
 * @returns exit status
 * @throws Refusal for a symptom that is none
 */
export function trouble(argv: Arguments & { json?: boolean }): number {
  const symptom = argv._[1];
  const found = symptom === undefined ? [...troubles] : troublesFor(String(symptom));
  print(
    argv.json
      ? JSON.stringify({ source: 'common practice, no source', troubles: found })
      : troubleText(found),
  );
  return MADE;
}

import { troubles, troublesFor } from '../lib/fit/troubles.js';
import { troubleText } from '../lib/write/troubleText.js';
import { MADE, print } from './output.js';
import type { Arguments } from './usage.js';

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

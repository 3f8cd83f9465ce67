import { planSets } from '../lib/proof/planSets.js';
import { refuse } from '../lib/refusal.js';
import { planText } from '../lib/write/planFile.js';
import { planTable } from '../lib/write/planTable.js';
import { writeNew } from '../lib/write/planWrite.js';
import { checkBaseName } from './baseName.js';
import { complain, MADE, note, print, stopSignal } from './output.js';
import { planWishes, wholeNumber } from './planWishes.js';
import type { Arguments } from './usage.js';

/** Flags as they were typed. */
export interface PlanArguments extends Arguments {
  write?: string;
  row?: string;
  force?: boolean;
  json?: boolean;
}

/**
 * Searches, writes a row where asked, and prints what was found.
 * @returns exit status
 * @throws Refusal for flags that are wrong, a row that is not there, a file that is
 */
export async function plan(argv: PlanArguments): Promise<number> {
  if (argv.write === undefined && argv.row !== undefined)
    refuse('needs-another', 'row', argv.row, 'is only for --write');
  if (argv.write !== undefined) checkBaseName('write', argv.write);
  const row = argv.row === undefined ? 1 : wholeNumber('row', argv.row, 1);
  if (argv.shifts === 'solve') note('finding profile shifts …');
  const found = planWishes(argv, planSets);
  let written: string | undefined;
  if (argv.write !== undefined) {
    const chosen = found.rows[row - 1];
    const rule = found.rows.length ? `there are ${found.rows.length} rows` : 'no set was found';
    if (!chosen)
      refuse('out-of-range', 'row', row, rule, [...(found.rows.length ? [found.rows.length] : [])]);
    written = await writeNew('write', argv.write, planText(chosen, found.wanted), argv.force ?? false, {
      signal: stopSignal(),
      say: complain,
    });
  }
  if (argv.json) print(JSON.stringify(found));
  else print([planTable(found), ...(written ? ['', `wrote ${written}, row ${row}`] : [])].join('\n'));
  return MADE;
}

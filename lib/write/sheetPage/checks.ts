import type { Check } from '../../proof/check.js';
import { standing } from '../../proof/standing.js';
import { escapeText } from '../escape.js';
import { section, table, withUnit } from './html.js';

/** One line that says whether the set may be printed. */
export function verdict(checks: readonly Check[]): string {
  const failed = (level: Check['level']): string[] =>
    checks.filter((check) => check.level === level && !check.holds).map(({ id }) => id);
  const [musts, shoulds] = [failed('must'), failed('should')];
  if (musts.length > 0) {
    const what = musts.length === 1 ? 'a check that must hold fails' : 'checks that must hold fail';
    return mark('fails', `Do not print: ${what} (${musts.join(', ')}).`);
  }
  const held = 'Every check that must hold does.';
  return shoulds.length > 0
    ? mark('holds', `${held} Of those that should, these fail: ${shoulds.join(', ')}.`)
    : mark('holds', `${held} So does every check that should.`);
}

function mark(kind: 'holds' | 'fails', words: string): string {
  return `<p class="verdict ${kind}">${escapeText(words)}</p>`;
}

/** Every check with its figure against its limit, what fails first. */
export function checksSection(checks: readonly Check[]): string {
  const weight = { must: 0, should: 1, note: 2 };
  const rank = (check: Check): number => (check.holds ? 10 : 0) + weight[check.level];
  const ordered = [...checks].sort((a, b) => rank(a) - rank(b));
  const rows = ordered.map((check) => [
    check.id,
    standing(check),
    check.level,
    withUnit(check.value, check.unit),
    withUnit(check.limit, check.unit),
    check.says,
  ]);
  const heads = ['Check', 'Result', 'Level', 'Found', 'Limit', 'What it says'];
  const classes = ordered.map(standing);
  return section('Checks', table('Figures against limits', heads, rows, classes));
}

import { visible } from '../visible.js';
import type { BatchRow } from '../write/batchPage.js';

/**
 * Rows as a table of comma-separated values (RFC 4180), a heading first: name, status, a column for every
 * parameter that varies, sizes, gaps, checks, triangles, volume, refusal. mm, mm³.
 * @param paths parameters that vary
 */
export function* batchCsv(paths: readonly string[], rows: readonly BatchRow[]): Generator<string> {
  const pairs = [...new Set(rows.flatMap(({ gaps }) => gaps.map(({ between }) => between)))];
  yield line([
    'name',
    'status',
    ...paths,
    'size x',
    'size y',
    'size z',
    ...pairs.flatMap((pair) => [`gap asked ${pair}`, `gap rolling ${pair}`, `gap measured ${pair}`]),
    'checks that hold',
    'checks that fail',
    'triangles',
    'volume',
    'refusal',
  ]);
  for (const row of rows) {
    const gapOf = new Map(row.gaps.map((gap) => [gap.between, gap]));
    const gaps = pairs.flatMap((pair): unknown[] => {
      const gap = gapOf.get(pair);
      return gap ? [gap.asked, gap.rolling, gap.bodies] : ['', '', ''];
    });
    yield line([
      row.name,
      row.status,
      ...paths.map((path) => row.overrides[path]),
      ...(row.size ?? ['', '', '']),
      ...gaps,
      row.checks.held,
      row.checks.failed.join(' '),
      row.triangles,
      row.volume,
      row.refusal?.says.join('; '),
    ]);
  }
}

function line(cells: readonly unknown[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

/**
 * Spreadsheets run texts that begin like this as formulas; some take a semicolon for the end of a cell. Full-width signs
 * count as well: some read them as the plain ones.
 */
const FORMULA = /(^\s*|;\s*)([=+\-@＝＋－＠])/g;

function cell(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = visible(typeof value === 'string' ? value : (JSON.stringify(value) ?? ''));
  const safe = text.replace(FORMULA, "$1'$2");
  return /[",;]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

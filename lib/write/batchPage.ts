import { createHash } from 'node:crypto';
import type { ProblemCode } from '../problemCode.js';
import { sortTable } from './batchPage/sortTable.js';
import { escapeText } from './escape.js';
import { pageHead } from './sheetPage/html.js';

/** One variant of a batch as its summary shows it: plain data, small however large the set. mm, mm³. */
export interface BatchRow {
  name: string;
  /** `missing`: another shard has still to make it. */
  status: 'made' | 'refused' | 'missing';
  /** What this variant changes: path of the parameter, value. */
  overrides: Record<string, unknown>;
  /** Sides of the box around all parts, x, y, z; null when none were built. */
  size: [number, number, number] | null;
  gears: { part: string; teeth: number; count: number; module: number }[];
  gaps: { between: string; asked: number; rolling: number | null; bodies: number | null }[];
  /** How many checks hold, and which that should or must do not. */
  checks: { held: number; failed: string[] };
  triangles: number | null;
  volume: number | null;
  /** Names of the files written, beside the page. */
  files: string[];
  refusal: RefusalRecord | null;
}

/** Why a variant was not made: the first problem, and one line for each. */
export interface RefusalRecord {
  /** Name of the rule, which stays when its words change. */
  code: ProblemCode;
  /** Parameter, or check that stopped it. */
  parameter: string;
  value: unknown;
  rule: string;
  nearest: unknown[];
  says: string[];
}

/** Runs in the page. */
const SCRIPT = `(${sortTable})(document.querySelector('table'));`;

/** The page may load nothing from anywhere but the pictures beside it, and run nothing but its own script. */
const POLICY = `default-src 'none'; style-src 'unsafe-inline'; img-src 'self'; script-src 'sha256-${createHash('sha256').update(SCRIPT).digest('base64')}'`;

const STYLE = `
:root { color-scheme: light dark; --ink: #1c1e21; --paper: #fdfdfc; --line: #c9ccd1; --soft: #f1f2f0; --bad: #a3200d; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e7e9; --paper: #17191c; --line: #43474d; --soft: #212428; --bad: #ff9c8a; } }
body { font: 16px/1.4 system-ui, sans-serif; margin: 1rem; background: var(--paper); color: var(--ink); }
h1 { font-size: 1.6rem; margin: 0 0 .5rem; overflow-wrap: anywhere; }
div { overflow-x: auto; }
table { border-collapse: collapse; font-size: .92rem; }
th, td { padding: .35rem .7rem .35rem 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: middle; }
thead th { border-bottom-width: 2px; white-space: nowrap; }
tbody th { font-weight: 600; }
td.figure { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
td.refused { color: var(--bad); min-width: 14rem; }
button { font: inherit; font-weight: 600; color: inherit; background: none; border: 0; padding: .3rem 0; cursor: pointer; text-decoration: underline dotted; }
[aria-sort=ascending] button::after { content: ' ↑'; content: ' ↑' / ''; }
[aria-sort=descending] button::after { content: ' ↓'; content: ' ↓' / ''; }
a { color: inherit; }
img { display: block; width: 10rem; aspect-ratio: 4 / 3; object-fit: contain; background: #fff; border: 1px solid var(--line); }
`;

/**
 * Index of a batch: one row a variant, with links to its files. Made piece by piece, so that thousands of rows pass
 * in little memory.
 * @param name of the parameter file
 */
export function* batchPage(name: string, rows: readonly BatchRow[]): Generator<string> {
  const title = escapeText(name);
  const of = (status: BatchRow['status']) => rows.filter((row) => row.status === status).length;
  yield [
    pageHead(`${name}: variants`, POLICY, STYLE),
    '<main>',
    `<h1>${title}</h1>`,
    `<p>${rows.length} variants: ${of('made')} made, ${of('refused')} refused, ${of('missing')} not made yet. Lengths in mm.</p>`,
    '<div tabindex="0" role="region" aria-label="Variants"><table>',
    `<thead><tr>${HEAD.map(headCell).join('')}</tr></thead>`,
    '<tbody>\n',
  ].join('\n');
  for (const row of rows) yield `${rowOf(row)}\n`;
  yield `</tbody>\n</table></div>\n</main>\n<script>${SCRIPT}</script>\n</body>\n</html>\n`;
}

const HEAD = [
  'variant',
  'picture',
  'values',
  'status',
  'size, mm',
  'least gap, mm',
  'checks that fail',
  'triangles',
  'volume, cm³',
  'files',
];
/** Columns by which there is nothing to sort. */
const FIXED = new Set(['picture', 'files']);

function headCell(words: string): string {
  return `<th scope="col">${FIXED.has(words) ? words : `<button type="button">${words}</button>`}</th>`;
}

function rowOf(row: BatchRow): string {
  const figure = (text: string, value: number | null) =>
    `<td class="figure" data-value="${value ?? ''}">${text}</td>`;
  const plain = (text: string) => `<td>${escapeText(text)}</td>`;
  const values = Object.entries(row.overrides).map(([path, value]) => `${path} ${shown(value)}`);
  const says = row.refusal ? `refused: ${row.refusal.says.join('; ')}` : row.status;
  const gaps = row.gaps.map(({ bodies }) => bodies).filter((gap) => gap !== null);
  return [
    '<tr>',
    `<th scope="row">${escapeText(row.name)}</th>`,
    `<td>${pictureOf(row)}</td>`,
    plain(values.join(', ')),
    row.status === 'refused' ? `<td class="refused">${escapeText(says)}</td>` : plain(says),
    figure(
      row.size ? row.size.map((side) => side.toFixed(1)).join(' × ') : '',
      row.size && Math.max(...row.size),
    ),
    figure(gaps.map((gap) => gap.toFixed(3)).join(' '), gaps.length ? Math.min(...gaps) : null),
    `<td data-value="${row.status === 'missing' ? '' : row.checks.failed.length}">${escapeText(row.checks.failed.join(', '))}</td>`,
    figure(row.triangles === null ? '' : String(row.triangles), row.triangles),
    figure(row.volume === null ? '' : (row.volume / 1000).toFixed(1), row.volume),
    `<td>${row.files.map((file) => link(file, row.name)).join(' ')}</td>`,
    '</tr>',
  ].join('');
}

function pictureOf({ name, files }: BatchRow): string {
  const file = files.find((one) => one === `${name}.png`);
  if (!file) return '';
  return `<img src="./${encodeURIComponent(file)}" alt="" loading="lazy">`;
}

function link(file: string, name: string): string {
  return `<a href="./${encodeURIComponent(file)}">${escapeText(file.slice(name.length + 1))}</a>`;
}

const LONGEST_SHOWN = 60;

function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}

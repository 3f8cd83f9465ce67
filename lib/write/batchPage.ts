import { escapeText } from './escape.js';

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
  /** Parameter, or check that stopped it. */
  parameter: string;
  value: unknown;
  rule: string;
  nearest: unknown[];
  says: string[];
}

/** The page may load nothing from anywhere but the drawings beside it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src 'self'";

const STYLE = `
body { font: 16px/1.4 system-ui, sans-serif; margin: 1rem; color-scheme: light dark; }
div { overflow-x: auto; }
table { border-collapse: collapse; }
th, td { padding: .25rem .6rem; border-bottom: 1px solid #8888; text-align: left; vertical-align: top; }
td.figure { text-align: right; font-variant-numeric: tabular-nums; }
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
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    `<title>${title}: variants</title>`,
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    `<h1>${title}</h1>`,
    `<p>${rows.length} variants: ${of('made')} made, ${of('refused')} refused, ${of('missing')} not made yet. Lengths in mm.</p>`,
    '<div><table>',
    `<thead><tr>${HEAD.map((cell) => `<th scope="col">${cell}</th>`).join('')}</tr></thead>`,
    '<tbody>\n',
  ].join('\n');
  for (const row of rows) yield `${rowOf(row)}\n`;
  yield '</tbody>\n</table></div>\n</body>\n</html>\n';
}

const HEAD = [
  'variant',
  'values',
  'status',
  'size',
  'gaps measured',
  'checks that fail',
  'triangles',
  'cm³',
  'files',
];

function rowOf(row: BatchRow): string {
  const figure = (text: string) => `<td class="figure">${text}</td>`;
  const plain = (text: string) => `<td>${escapeText(text)}</td>`;
  const values = Object.entries(row.overrides).map(([path, value]) => `${path} ${shown(value)}`);
  const says = row.refusal ? `refused: ${row.refusal.says.join('; ')}` : row.status;
  return [
    '<tr>',
    `<th scope="row">${escapeText(row.name)}</th>`,
    plain(values.join(', ')),
    plain(says),
    figure(row.size ? row.size.map((side) => side.toFixed(1)).join(' × ') : ''),
    figure(row.gaps.map(({ bodies }) => bodies?.toFixed(3) ?? '').join(' ')),
    plain(row.checks.failed.join(', ')),
    figure(row.triangles === null ? '' : String(row.triangles)),
    figure(row.volume === null ? '' : (row.volume / 1000).toFixed(1)),
    `<td>${row.files.map((file) => link(file, row.name)).join(' ')}</td>`,
    '</tr>',
  ].join('');
}

function link(file: string, name: string): string {
  return `<a href="./${encodeURIComponent(file)}">${escapeText(file.slice(name.length + 1))}</a>`;
}

const LONGEST_SHOWN = 60;

function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}

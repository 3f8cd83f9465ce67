import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchCsv } from '../../lib/batch/csv.js';
import { emptyRow } from '../../lib/batch/record.js';
import { isPlain } from '../../lib/visible.js';
import { batchPage } from '../../lib/write/batchPage.js';
import { escapeText } from '../../lib/write/escape.js';

/** Cells of one line, by RFC 4180. */
function cellsOf(line: string, separator = ','): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    if (quoted && line[i] === '"' && line[i + 1] === '"') cell += line[i++];
    else if (line[i] === '"' && (quoted || cell === '')) quoted = !quoted;
    else if (!quoted && line[i] === separator) {
      cells.push(cell);
      cell = '';
    } else cell += line[i];
  }
  return [...cells, cell];
}

const lineOf = (value: unknown) => {
  const [, line] = [...batchCsv(['module'], [emptyRow('x', { module: value })])];
  return line;
};

/** What spreadsheets run: these first, white space aside, plain or full-width. */
const formula = /^\s*[=+\-@＝＋－＠]/;
const hostile = fc.oneof(
  fc.constantFrom(
    '=1+1',
    ' =1+1',
    '\t=1',
    '\r=1',
    '+1',
    '-1',
    '@x',
    '＝1',
    'a;=1',
    'a; =1',
    'a","=1',
    '\u001b[31m',
    'a\u202eb',
  ),
  fc.string({ unit: 'binary' }),
  fc.string(),
);

describe('summary.csv', () => {
  it('holds no formula of a file, however it is split, and nothing that cannot be seen', () => {
    fc.assert(
      fc.property(hostile, (value) => {
        const line = lineOf(value);
        expect(line.endsWith('\r\n')).toBe(true);
        const text = line.slice(0, -2);
        expect(isPlain(text)).toBe(true);
        for (const separator of [',', ';'])
          for (const cell of cellsOf(text, separator)) expect(cell).not.toMatch(formula);
        expect(cellsOf(text)).toHaveLength(cellsOf([...batchCsv(['module'], [])][0].trimEnd()).length);
      }),
    );
  });

  it('leaves numbers and words as they are', () => {
    expect(cellsOf(lineOf(-0.25))[2]).toBe('-0.25');
    expect(cellsOf(lineOf('large'))[2]).toBe('large');
    expect(cellsOf(lineOf({ form: 'spur', angle: 0 }))[2]).toBe('{"form":"spur","angle":0}');
    expect(cellsOf(lineOf('=cmd'))[2]).toBe("'=cmd");
  });
});

describe('pages and drawings', () => {
  it('write out what cannot be seen in a file’s values', () => {
    const value = '\u202e<b>\u001b[31m\u200b';
    const page = [...batchPage('spinner', [{ ...emptyRow('x', { module: value }), status: 'made' }])].join(
      '',
    );
    expect(page).toContain('\\u202e&lt;b&gt;');
    expect(isPlain(page.split('<script>')[0].replaceAll('\n', ''))).toBe(true);
    expect(escapeText('a\u202eb\u200fc')).toBe('a\\u202eb\\u200fc');
  });
});

import { visible } from '../visible.js';
import { type BatchRow, batchPage } from '../write/batchPage.js';
import { type OutputFile, writeFiles } from '../write/files.js';
import { batchCsv } from './csv.js';

/** Lines of text joined into chunks of about this many characters. */
const CHUNK = 65_536;

/**
 * Writes the summary of a batch beside its files: `summary.csv`, `summary.json`, `index.html`. The same rows give
 * the same bytes.
 * @param name of the parameter file
 * @param paths parameters that vary
 * @returns the paths written
 * @throws Refusal where the file system does not allow it
 */
export function writeSummary(
  folder: string,
  name: string,
  paths: readonly string[],
  rows: readonly BatchRow[],
): Promise<string[]> {
  const file = (ending: string, pieces: () => Iterable<string>): OutputFile => ({
    name: ending,
    chunks: () => encoded(pieces()),
  });
  return writeFiles(folder, [
    file('summary.csv', () => batchCsv(paths, rows)),
    file('summary.json', () => json(name, rows)),
    file('index.html', () => batchPage(name, rows)),
  ]);
}

function* json(name: string, rows: readonly BatchRow[]): Generator<string> {
  yield `{\n"name": ${JSON.stringify(name)},\n"variants": [\n`;
  for (const [i, row] of rows.entries())
    yield `${visible(JSON.stringify(row))}${i + 1 < rows.length ? ',' : ''}\n`;
  yield ']\n}\n';
}

function* encoded(pieces: Iterable<string>): Generator<Uint8Array> {
  const encoder = new TextEncoder();
  let text = '';
  for (const piece of pieces) {
    text += piece;
    if (text.length < CHUNK) continue;
    yield encoder.encode(text);
    text = '';
  }
  yield encoder.encode(text);
}

// What a mutant is called, so that it keeps its name when lines move: file, kind, what stood there, what stands there now.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';

const offset = (text, { line, column }) =>
  text
    .split('\n')
    .slice(0, line)
    .reduce((sum, row) => sum + row.length + 1, 0) + column;

/** What stood at a mutant's location; lines and columns count from 0. */
export const originalOf = (text, { start, end }) => text.slice(offset(text, start), offset(text, end));

/** A mutant's lasting identity, from its absolute or relative path. */
export function identityOf({ fileName, mutatorName, replacement, location }) {
  const file = relative(process.cwd(), fileName).replaceAll('\\', '/');
  return {
    file,
    mutator: mutatorName,
    from: originalOf(readFileSync(fileName, 'utf8'), location),
    to: replacement,
  };
}

/** Whether a mutant is in a sample of one in so many (none where that is 0), by a digest of seed and identity. */
export function inSample(identity, { seed, oneIn }) {
  const digest = createHash('sha256')
    .update(JSON.stringify([seed, identity]))
    .digest();
  return digest.readUInt32BE() % oneIn === 0;
}

// What a mutant is called, so that it keeps its name when lines move: file, kind, what stood there, what stands there now.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';

/** Its file, from here. */
export const fileOf = ({ fileName }) => relative(process.cwd(), fileName).replaceAll('\\', '/');

/** A mutant's lasting identity. @param first the number of the first line and column: 0 while it is run, 1 in a result */
export function identityOf(mutant, first) {
  const { fileName, mutatorName, replacement, location } = mutant;
  const text = readFileSync(fileName, 'utf8');
  const from = text.slice(offset(text, location.start, first), offset(text, location.end, first));
  return { file: fileOf(mutant), mutator: mutatorName, from, to: replacement };
}

function offset(text, { line, column }, first) {
  const above = text.split('\n').slice(0, line - first);
  return above.reduce((sum, row) => sum + row.length + 1, 0) + column - first;
}

/** Whether a mutant is in a sample of one in so many (none where that is 0), by a digest of seed and identity. */
export function inSample(identity, { seed, oneIn }) {
  const digest = createHash('sha256')
    .update(JSON.stringify([seed, identity]))
    .digest();
  return digest.readUInt32BE() % oneIn === 0;
}

/** Whether a result says that no test noticed. */
export const lives = ({ status }) => status === 'Survived' || status === 'NoCoverage';

/** A mutant that lives, in words. */
export function described(result) {
  const { file, mutator, from, to } = identityOf(result, 1);
  const { line, column } = result.location.start;
  const why = result.status === 'NoCoverage' ? 'no test comes here' : 'survived';
  return `${file}:${line}:${column} ${why} (${mutator})\n  - ${from}\n  + ${to}`;
}

const keyOf = ({ file, mutator, from, to }) => JSON.stringify([file, mutator, from, to]);
const equivalent = new Map(
  JSON.parse(readFileSync(new URL('equivalent.json', import.meta.url), 'utf8')).map(
    ({ reason, ...identity }) => [keyOf(identity), reason],
  ),
);

/** Why a mutant can be noticed by nothing, where that is known. */
export const reasonFor = (result) => equivalent.get(keyOf(identityOf(result, 1)));

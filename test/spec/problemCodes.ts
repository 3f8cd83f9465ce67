import { readFileSync } from 'node:fs';

const source = readFileSync(new URL('../../lib/problemCode.ts', import.meta.url), 'utf8');

/** Every code that a problem may carry, with what its docstring says of it, in the order of the source. */
export const problemCodes = new Map(
  [...source.matchAll(/\/\*\* ([^*]*) \*\/\n {2}\| '([^']*)'/g)].map(([, means, code]) => [code, means]),
);

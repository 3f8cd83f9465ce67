// Writes dist/lib/index.d.cts: the types that `require('cogweave')` has. The code itself is the same ES module for
// both, so that there is one `Refusal` class only; but TypeScript before module `node20` lets a CommonJS file see
// an ES module's types through `import()` types alone, one name at a time.
import { readFileSync, writeFileSync } from 'node:fs';

const folder = new URL('../dist/lib/', import.meta.url);
const source = readFileSync(new URL('index.d.ts', folder), 'utf8');
const module = await import(new URL('index.js', folder));
const whole = `import('./index.js', { with: { 'resolution-mode': 'import' } })`;

const lists = [...source.matchAll(/^export (type )?\{([^}]*)\}/gm)];
if (lists.length !== source.match(/^export /gm).length)
  throw new Error('lib/index.ts may hold lists of names only: export { … } from …');
const names = lists.flatMap(([, type = '', list]) => list.split(',').map((name) => `${type}${name.trim()}`));

const isClass = (name) => /^class\b/.test(String(module[name]));
const lines = names.flatMap((entry) => {
  const name = entry.replace(/^type /, '');
  const asType = `export type ${name} = ${whole}.${name};`;
  const asValue = `export declare const ${name}: typeof ${whole}.${name};`;
  if (entry !== name) return [asType];
  return isClass(name) ? [asValue, asType] : [asValue];
});
writeFileSync(new URL('index.d.cts', folder), `${lines.join('\n')}\n`);

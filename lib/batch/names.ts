import { createHash } from 'node:crypto';
import { isName, nameWith, nearestName } from '../spec/name.js';
import type { Overrides } from './overrides.js';
import type { Variants } from './variants.js';

/** Characters of a value that a name shows. */
const LONGEST_VALUE = 32;
/** Hexadecimal digits that tell apart names cut short or alike. */
const MARK_DIGITS = 8;

/**
 * A name for each variant, from the values it holds: `table-spinner_module-1.25_gap-0.2`. A variant that gives a
 * `name` of its own in a list goes by that. Names can stand as file names anywhere, and no two are the same even
 * where letter case does not count.
 * @param base name of the file itself
 */
export function variantNames(base: string, variants: Variants): string[] {
  const labels = shortLabels(variants.paths);
  const taken = new Set<string>();
  return Array.from({ length: variants.count }, (_, index) => {
    const overrides = variants.at(index);
    const wanted = nameOf(base, overrides, labels);
    let name = isName(wanted) ? wanted : marked(wanted, JSON.stringify(overrides));
    for (let again = 2; taken.has(key(name)); again++) name = marked(wanted, `${index} ${again}`);
    taken.add(key(name));
    return name;
  });
}

function nameOf(base: string, overrides: Overrides, labels: Map<string, string>): string {
  const { name, ...rest } = overrides;
  const stem = typeof name === 'string' ? nearestName(name) : base;
  const values = Object.entries(rest).map(([path, value]) => `${labels.get(path)}-${shown(value)}`);
  return [stem, ...(typeof name === 'string' ? [] : values)].join('_');
}

/** The last words of each path, as many as it takes to tell it from the others: `gap`, `sun-teeth`. */
function shortLabels(paths: readonly string[]): Map<string, string> {
  const ending = (path: string, words: number) => path.split('.').slice(-words).join('-');
  return new Map(
    paths.map((path) => {
      let words = 1;
      const alike = () => paths.filter((other) => ending(other, words) === ending(path, words)).length > 1;
      while (words < path.split('.').length && alike()) words++;
      return [path, ending(path, words)];
    }),
  );
}

/** A value as part of a name: numbers and words as they are, the values of a group in a row. */
function shown(value: unknown): string {
  const leaves = (item: unknown): string[] =>
    typeof item === 'object' && item !== null ? Object.values(item).flatMap(leaves) : [String(item)];
  const text = leaves(value)
    .join('-')
    .replace(/[^\p{L}\p{M}\p{N}._-]+/gu, '-');
  return text.length > LONGEST_VALUE ? `${text.slice(0, LONGEST_VALUE)}…` : text;
}

/** The name cut short where it must be, with a mark made from `what`, so that it stays its own. */
function marked(name: string, what: string): string {
  const mark = createHash('sha256').update(`${name} ${what}`).digest('hex').slice(0, MARK_DIGITS);
  return nameWith(nearestName(name), `_${mark}`);
}

function key(name: string): string {
  return name.normalize('NFKC').toLowerCase().normalize('NFKC');
}

const LONGEST = 100;
/** File systems count bytes: 255 at most, of which the endings and a temporary mark need some. */
const MOST_BYTES = 200;

/** Pattern of a name: letters and digits of any script, space, `.`, `_`, `-`; the ends are neither space nor dot. */
export const namePattern = '^[\\p{L}\\p{M}\\p{N}_-]([\\p{L}\\p{M}\\p{N} ._-]*[\\p{L}\\p{M}\\p{N}_-])?$';
const pattern = new RegExp(namePattern, 'u');

/** Whether `text` can be the base name of the files written. */
export function isName(text: string): boolean {
  return text.length <= LONGEST && utf8Length(text) <= MOST_BYTES && pattern.test(text);
}

/** The name closest to `text` that works, or `usual` where nothing of it can stay. */
export function nearestName(text: string, usual = 'planetary-set'): string {
  let name = text
    .slice(0, LONGEST)
    .replace(/[^\p{L}\p{M}\p{N} ._-]+/gu, '-')
    .replace(/^[ .-]+/, '');
  while (utf8Length(name) > MOST_BYTES) name = [...name].slice(0, -1).join('');
  name = name.replace(/[ .]+$/, '');
  return /[\p{L}\p{N}]/u.test(name) && isName(name) ? name : usual;
}

function utf8Length(text: string): number {
  return new TextEncoder().encode(text).length;
}

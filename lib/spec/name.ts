import { isPlain } from '../visible.js';

const LONGEST = 100;
/** File systems count bytes: 255 at most, of which the endings and a temporary mark need some. */
const MOST_BYTES = 200;

/** Names that Windows keeps for devices, whatever follows a dot (its naming rules, from memory), in any case of letters. */
const DEVICES = ['con', 'prn', 'aux', 'nul', 'com[0-9¹²³]', 'lpt[0-9¹²³]'];
const anyCase = (word: string) =>
  word.replace(/(?<!\[.*)[a-z]/g, (letter) => `[${letter.toUpperCase()}${letter}]`);
const device = `(?:${DEVICES.map(anyCase).join('|')}) *(?:\\.|$)`;

/**
 * Pattern of a name: letters and digits of any script, space, `.`, `_`, `-`. It neither begins with a dash, as flags
 * do, nor ends with a space or dot, which Windows drops, nor is it the name of a device.
 */
export const namePattern = `^(?!${device})[\\p{L}\\p{N}_]([\\p{L}\\p{M}\\p{N} ._-]*[\\p{L}\\p{M}\\p{N}_-])?$`;
const pattern = new RegExp(namePattern, 'u');
const deviceName = new RegExp(`^${device}`, 'u');

/** The same in words that follow `must be`. */
export const nameRule = `a name of letters, digits, space, . _ - (at most ${LONGEST}, no dot, space or dash first, no dot or space last, and no name of a device such as CON or LPT1)`;

/** Whether `text` can be the base name of the files written. */
export function isName(text: string): boolean {
  return (
    text.length <= LONGEST &&
    utf8Length(text) <= MOST_BYTES &&
    pattern.test(text) &&
    isPlain(text) &&
    !deviceName.test(text.normalize('NFKC'))
  );
}

/** The name closest to `text` that works, or `usual` where nothing of it can stay. */
export function nearestName(text: string, usual = 'planetary-set'): string {
  const seen = [...text.slice(0, LONGEST).replace(/[^\p{L}\p{M}\p{N} ._-]+/gu, '-')].filter(isPlain);
  let name = seen.join('').replace(/^[ .\p{M}-]+/u, '');
  // A device's name with a word behind it is none.
  if (deviceName.test(name.normalize('NFKC'))) name = name.replace(/ *(?=\.|$)/, '-set');
  while (name.length > LONGEST || utf8Length(name) > MOST_BYTES) name = [...name].slice(0, -1).join('');
  name = name.replace(/[ .]+$/, '');
  return /[\p{L}\p{N}]/u.test(name) && isName(name) ? name : usual;
}

/** A name and an ending, the name cut short where both would be too long. @param name one that works */
export function nameWith(name: string, ending: string): string {
  for (let stem = [...name]; ; stem = stem.slice(0, -1)) {
    const whole = `${stem.join('')}${ending}`;
    if (isName(whole)) return whole;
  }
}

/**
 * Why the base name of a file cannot name its results without a word: it would be taken for something else, or not be
 * seen for what it is. Undefined for one that can, some of its signs replaced.
 */
export function nameFault(base: string): string | undefined {
  if (base.startsWith('-')) return 'begins with a dash, as flags do';
  if (deviceName.test(base.normalize('NFKC'))) return 'is the name of a device to some systems';
  if (!isPlain(base)) return 'holds characters that cannot be seen';
  if (utf8Length(base) > MOST_BYTES) return `has more than ${MOST_BYTES} bytes`;
  return undefined;
}

function utf8Length(text: string): number {
  return new TextEncoder().encode(text).length;
}

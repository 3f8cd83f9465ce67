import { problemOf, refuseAll } from '../refusal.js';
import { closest } from '../spec/nearest.js';

/** Formats that a set's parts can be written in. */
export const formats = ['stl', '3mf'] as const;
/** One of them. */
export type Format = (typeof formats)[number];

/**
 * The formats named in a list with commas, each once, letter case aside [all of them].
 * @throws Refusal for the parameter `format` where one is unknown or none is named
 */
export function readFormats(list: string = formats.join(',')): Format[] {
  const words = list.split(',').map((word) => word.trim().toLowerCase().replace(/^\./, ''));
  const rule = `must be ${formats.join(' or ')}, or both with a comma`;
  const nearest = (word: string) => (word === '' ? [...formats] : [closest(word, formats)]);
  const strange = words.filter((word) => !isFormat(word));
  refuseAll(strange.map((word) => problemOf('not-one-of', 'format', word, rule, nearest(word))));
  return formats.filter((format) => words.includes(format));
}

/** Endings of all that may lie beside a NAME.sheet.json. */
export const endings = [...formats, 'svg', 'png', 'sheet.html'] as const;

/** Names of the files of a set that is written in some formats, with a picture or without. */
export function setFiles(name: string, chosen: readonly Format[], picture: boolean): string[] {
  const written = [...chosen, 'svg', 'sheet.html', ...(picture ? ['png'] : []), 'sheet.json'];
  return written.map((ending) => `${name}.${ending}`);
}

function isFormat(word: string): word is Format {
  return (formats as readonly string[]).includes(word);
}

import { closest } from './nearest.js';
import { isMapping } from './plainData.js';
import type { Kind } from './types.js';

/** Every kind, and a key that only its files have. */
const kinds: Record<Kind, string> = { planetary: 'planets', pair: 'wheel', rack: 'bar', gear: 'gear' };

/** The name of a file's results where neither the file nor its own name gives one. */
export const usualNames: Record<Kind, string> = {
  planetary: 'planetary-set',
  pair: 'gear-pair',
  rack: 'rack-and-pinion',
  gear: 'gear',
};

/**
 * The kind that a file is of, or is meant to be: the one given, else the one whose key it has, else the one whose
 * name comes nearest, else `planetary`. A file with a wrong kind is judged by the keys of the one meant.
 */
export function kindMeant(data: unknown): Kind {
  if (!isMapping(data)) return 'planetary';
  const names = Object.keys(kinds) as Kind[];
  const { kind } = data;
  if (typeof kind === 'string' && Object.hasOwn(kinds, kind)) return kind as Kind;
  const byKey = names.find((name) => Object.hasOwn(data, kinds[name]));
  return byKey ?? (typeof kind === 'string' ? (closest(kind, names) as Kind) : 'planetary');
}

import { Refusal } from '../../spec/refusal.js';
import type { Spec } from '../../spec/types.js';
import { type Change, changed } from './changes.js';
import { setWorks } from './setWorks.js';
import { trainWorks } from './trainWorks.js';

/**
 * Whether what a file asks for keeps every `must` that can be worked out from its numbers and outlines. Some
 * milliseconds.
 */
export function works(spec: Spec): boolean {
  try {
    return spec.kind === 'planetary' ? setWorks(spec) : trainWorks(spec);
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

/**
 * Whether a file with values changed can be read, and works.
 * @param more what else it must keep [nothing]
 */
export function worksWith<S extends Spec>(spec: S, change: Change, more?: (other: S) => boolean): boolean {
  const other = changed(spec, change);
  return other !== undefined && works(other) && (!more || more(other));
}

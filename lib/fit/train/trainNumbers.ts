import type { Spec } from '../../spec/types.js';
import type { Arrangement } from './arrangement.js';
import { gear } from './gear.js';
import { pair } from './pair.js';
import { planetary } from './planetary.js';
import { rack } from './rack.js';
import type { Train } from './train.js';

/** One for each kind of file. */
const arrangements = { planetary, pair, rack, gear };

/** How a file's kind becomes a train. */
export function arrangementOf<S extends Spec>({ kind }: S): Arrangement<S> {
  return arrangements[kind] as Arrangement<Spec> as Arrangement<S>;
}

/**
 * The numbers of whatever a file asks for: teeth, shifts, and radii as made.
 * @throws Refusal when teeth cannot run together, or bores and features find no room
 */
export function trainNumbers<S extends Spec>(spec: S): Train<S> {
  return arrangementOf(spec).numbers(spec);
}

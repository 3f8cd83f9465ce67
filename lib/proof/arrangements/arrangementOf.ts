import type { Spec } from '../../spec/types.js';
import type { ProofArrangement } from './arrangement.js';
import { gear, pair, rack } from './parallel.js';
import { planetary } from './planetary.js';

/** One for each kind of file. */
const arrangements = { planetary, pair, rack, gear };

/** What is asked of a file's kind alone. */
export function arrangementOf<S extends Spec>({ kind }: S): ProofArrangement<S> {
  return arrangements[kind] as ProofArrangement<Spec> as ProofArrangement<S>;
}

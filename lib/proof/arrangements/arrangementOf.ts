import type { Spec } from '../../spec/types.js';
import type { ProofArrangement } from './arrangement.js';
import { gear, pair, rack } from './parallel.js';
import { planetary } from './planetary.js';

/** What is asked of a file's kind alone. */
export function arrangementOf<S extends Spec>({ kind }: S): ProofArrangement<S> {
  const arrangements = { planetary, pair, rack, gear };
  return arrangements[kind] as ProofArrangement<Spec> as ProofArrangement<S>;
}

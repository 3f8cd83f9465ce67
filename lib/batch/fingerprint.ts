import { createHash } from 'node:crypto';
import { inOrder } from '../spec/plainData.js';
import type { Spec } from '../spec/types.js';
import { version } from '../version.js';

/** What decides the bytes of a variant's files beside its parameters. */
export interface Asked {
  formats: readonly string[];
  strict: boolean;
  /** Size of a picture, pixels. */
  picture?: { width: number; height: number };
}

/** SHA-256, hexadecimal, of all that a variant's files depend on: parameters, formats and version of cogweave. */
export function fingerprint(spec: Spec, { formats, strict, picture }: Asked): string {
  const all = inOrder({ spec, formats, strict, picture, cogweave: version });
  return createHash('sha256').update(JSON.stringify(all)).digest('hex');
}

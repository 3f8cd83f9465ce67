import { makeFlags } from './make.js';
import { text } from './text.js';

const { force: _, ...shared } = makeFlags;

/** Flags of `batch`. */
export const batchFlags = {
  jobs: text('variants made at a time [number of cores]'),
  shard: text('I/N: only every Nth variant, from the Ith on; for many machines on one file [1/1]'),
  ...shared,
} as const;

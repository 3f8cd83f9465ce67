import { isMapping, type Plain } from '../spec/plainData.js';
import type { Overrides } from './overrides.js';

/** The variants of a file, counted, each worked out when it is asked for. */
export interface Variants {
  count: number;
  /** What variant `index` (0 first) changes. */
  at(index: number): Overrides;
  /** Every path that any of them changes, in the order of the file. */
  paths: string[];
}

/**
 * The variants that a file lists: every combination of a mapping from path to values (the last path changes
 * fastest), or a list of overrides as it stands.
 * @param variants as `variantFindings` found no fault with
 */
export function expandVariants(variants: Plain | Plain[]): Variants {
  if (!isMapping(variants))
    return {
      count: variants.length,
      at: (index) => variants[index],
      paths: [...new Set(variants.flatMap((each) => Object.keys(each)))],
    };
  const axes = Object.entries(variants) as [string, unknown[]][];
  return {
    count: axes.reduce((product, [, values]) => product * values.length, 1),
    at: (index) => combination(axes, index),
    paths: axes.map(([path]) => path),
  };
}

/** Number `index` written in digits of mixed base, one digit a list. */
function combination(axes: readonly [string, unknown[]][], index: number): Overrides {
  const chosen: [string, unknown][] = [];
  let left = index;
  for (const [path, values] of axes.toReversed()) {
    chosen.unshift([path, values[left % values.length]]);
    left = Math.floor(left / values.length);
  }
  return Object.fromEntries(chosen);
}

import { moduleGiven, withModuleGiven } from './moduleGiven.js';
import { resolveSpec } from './resolveSpec.js';
import type { Spec } from './types.js';

/**
 * A resolved file with another mesh tolerance.
 * @param text the tolerance in mm as it was typed, in the range that a file allows
 * @throws Refusal for the parameter `tolerance`
 */
export function withTolerance(spec: Spec, text: string): Spec {
  const { path, value } = moduleGiven(spec);
  const other = resolveSpec({ ...spec, tolerance: typedTolerance(text) });
  return withModuleGiven(other, path === 'module' ? undefined : value);
}

/** The number that a typed tolerance is; the text itself where it is none, to be refused as a value. */
export function typedTolerance(text: string): number | string {
  // Number('') is 0 and Number('0x1') is 1: only plain decimals are meant.
  return /^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*$/i.test(text) ? Number(text) : text;
}

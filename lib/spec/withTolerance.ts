import { resolveSpec } from './resolveSpec.js';
import type { Spec } from './types.js';

/**
 * A resolved file with another mesh tolerance.
 * @param text the tolerance in mm as it was typed, 0.0005 to 0.2
 * @throws Refusal for the parameter `tolerance`
 */
export function withTolerance(spec: Spec, text: string): Spec {
  // Number('') is 0 and Number('0x1') is 1: only plain decimals are meant.
  const tolerance = /^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*$/i.test(text) ? Number(text) : text;
  return resolveSpec({ ...spec, tolerance });
}

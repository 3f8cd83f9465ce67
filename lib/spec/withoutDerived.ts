import { unlessRefused } from '../refusal.js';
import { guideAt, knownPaths } from './guide.js';
import { moduleGiven } from './moduleGiven.js';
import { inOrder, isMapping, type Plain } from './plainData.js';
import { resolveSpec } from './resolveSpec.js';
import type { Spec } from './types.js';

/** Found once a file: it costs some dozen resolutions. */
const known = new WeakMap<Spec, Plain>();

/**
 * A resolved file as data, without the values that follow from others: whoever changes the module of it gets the rim of
 * the new module, as whoever changes a file does. Resolving it gives the same file again.
 */
export function withoutDerived(spec: Spec): Plain {
  const found = known.get(spec) ?? left(spec);
  known.set(spec, found);
  return found;
}

function left(spec: Spec): Plain {
  const whole = textOf(spec);
  let file = structuredClone(spec) as unknown as Plain;
  for (const path of knownPaths()) {
    const keys = path.split('.');
    if (guideAt(keys, file)?.defaultRule === undefined) continue;
    const shorter = without(file, keys);
    if (shorter && textOf(resolved(shorter)) === whole) file = shorter;
  }
  const { path, value } = moduleGiven(spec);
  const { module: _, ...rest } = file;
  return { ...rest, [path]: value };
}

/** Equal data give equal text, whatever the order of their keys. */
function textOf(data: unknown): string {
  return JSON.stringify(inOrder(data)) ?? '';
}

function resolved(file: Plain): Spec | undefined {
  return unlessRefused(() => resolveSpec(file), undefined);
}

/** The data without the value at a path; undefined where there is none. */
function without(group: Plain, [key, ...rest]: string[]): Plain | undefined {
  const value = group[key];
  if (value === undefined) return undefined;
  if (rest.length === 0) {
    const { [key]: _, ...others } = group;
    return others;
  }
  const below = isMapping(value) ? without(value, rest) : undefined;
  return below && { ...group, [key]: below };
}

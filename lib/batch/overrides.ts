import { isMapping, type Plain } from '../spec/plainData.js';

/** What one variant changes: dotted path of a parameter, and the value that it holds there. */
export type Overrides = Record<string, unknown>;

/** Groups that a file may give as one word, and the key that the word stands for. */
const WORD_MEANS: Record<string, string> = { printer: 'profile', filament: 'material' };

/**
 * A copy of a file's data with values put in place. A value takes the place of whatever the file gives at its path,
 * groups included: `helix: { form: spur }` leaves nothing of another helix.
 */
export function withOverrides(data: Plain, overrides: Overrides): Plain {
  let copy = data;
  // Groups before what lies in them, or the group would wipe out the value.
  const paths = Object.keys(overrides).sort((a, b) => depth(a) - depth(b));
  for (const path of paths) copy = withValue(copy, path.split('.'), overrides[path]);
  return copy;
}

function withValue(group: Plain, [key, ...rest]: string[], value: unknown): Plain {
  if (rest.length === 0) return { ...group, [key]: value };
  const below = Object.hasOwn(group, key) ? group[key] : undefined;
  return { ...group, [key]: withValue(asGroup(key, below), rest, value) };
}

function asGroup(key: string, value: unknown): Plain {
  if (isMapping(value)) return value;
  return typeof value === 'string' && WORD_MEANS[key] ? { [WORD_MEANS[key]]: value } : {};
}

function depth(path: string): number {
  return path.split('.').length;
}

import type { Finding } from './issues.js';
import { isMapping } from './plainData.js';

/**
 * The data with each problem's first offer in place and unknown keys left out, so that the rules between the
 * other values can still be checked. Never shown to anyone.
 */
export function repaired(data: unknown, findings: readonly Finding[]): unknown {
  const root = clone(data);
  for (const { path, nearest, code } of findings) {
    if (path.length === 0) continue;
    const last = path[path.length - 1];
    let group = root;
    for (const key of path.slice(0, -1)) {
      if (!isMapping(group)) break;
      group[key] ??= {};
      group = group[key];
    }
    if (!isMapping(group)) continue;
    if (code === 'unknown-key' || nearest.length === 0) delete group[last];
    else group[last] = clone(nearest[0]);
  }
  return root;
}

function clone(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(clone);
  if (isMapping(value)) return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, clone(v)]));
  return value;
}

import type { ProblemCode } from '../problemCode.js';
import { problemOf } from '../refusal.js';
import { guideOf, knownPaths } from './guide.js';
import type { Finding } from './issues.js';
import { closest } from './nearest.js';
import { isMapping } from './plainData.js';
import type { Kind } from './types.js';

const RULE = 'must be a mapping from parameter to a list of values, or a list of mappings of overrides';
const MOST_VARIANTS = 10_000;

/**
 * What is wrong with the variants of a file: unknown parameters, lists without values, more than 10 000 of them.
 * The values themselves are checked when a variant is made.
 * @param variants plain data as given; undefined for none
 * @param kind of the file, whose parameters they may name
 */
export function variantFindings(variants: unknown, kind: Kind): Finding[] {
  if (variants === undefined) return [];
  if (Array.isArray(variants)) return listFindings(variants, kind);
  if (!isMapping(variants) || Object.keys(variants).length === 0)
    return [finding('wrong-type', [], variants, RULE)];
  const found: Finding[] = [];
  let combinations = 1;
  for (const [key, values] of Object.entries(variants)) {
    const unknown = keyFindings([key], values, kind);
    found.push(...unknown);
    if (unknown.length) continue;
    if (Array.isArray(values) && values.length) combinations *= values.length;
    else {
      const nearest = Array.isArray(values) || isMapping(values) ? [] : [[values]];
      found.push(finding('wrong-type', [key], values, 'must be a list of at least one value', nearest));
    }
  }
  if (combinations > MOST_VARIANTS) found.push(tooMany(combinations, 'combinations'));
  return found;
}

function listFindings(list: unknown[], kind: Kind): Finding[] {
  if (list.length === 0) return [finding('wrong-count', [], list, RULE)];
  if (list.length > MOST_VARIANTS) return [tooMany(list.length, 'variants')];
  return list.flatMap((each, i) =>
    isMapping(each)
      ? Object.entries(each).flatMap(([key, value]) => keyFindings([String(i), key], value, kind))
      : [finding('wrong-type', [String(i)], each, 'must be a mapping of overrides')],
  );
}

function keyFindings(path: string[], value: unknown, kind: Kind): Finding[] {
  const key = path[path.length - 1];
  const paths = knownPaths(guideOf(kind)).filter((known) => known !== 'variants' && known !== 'kind');
  if (paths.includes(key)) return [];
  const meant = paths.find((known) => known.endsWith(`.${key}`)) ?? closest(key, paths);
  const nearest = [...path.slice(0, -1), meant].join('.');
  return [finding('unknown-key', path, value, 'unknown parameter', [`variants.${nearest}`])];
}

function tooMany(count: number, what: string): Finding {
  return finding('wrong-count', [], `${count} ${what}`, `must be at most ${MOST_VARIANTS} ${what}`);
}

function finding(
  code: ProblemCode,
  path: string[],
  value: unknown,
  rule: string,
  nearest?: unknown[],
): Finding {
  const at = ['variants', ...path];
  return { path: at, ...problemOf(code, at.join('.'), value, rule, nearest) };
}

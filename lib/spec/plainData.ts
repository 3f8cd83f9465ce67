import { type Problem, problemOf, Refusal, refuse, refuseAll } from '../refusal.js';

/** Bounds of what is read at all: far above any real parameter file. */
const DEEPEST = 16;
const MOST_VALUES = 20_000;

/** Keys that would reach into the prototypes of objects. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/** A plain copy of data: mappings, lists, and anything that is neither. */
export type Plain = { [key: string]: unknown };

/**
 * A deep copy of plain data (mappings and lists), without `undefined` entries and with −0 as 0.
 * @throws Refusal for keys that reach into prototypes, nesting beyond 16 levels, more than 20 000 values, objects
 * that are neither mapping nor list, and objects that cannot be read
 */
export function plainData(value: unknown): unknown {
  const problems: Problem[] = [];
  let copy: unknown;
  try {
    copy = copyOf(value, [], { left: MOST_VALUES }, problems);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    refuse('wrong-type', 'file', typeof value, 'cannot be read as plain data');
  }
  refuseAll(problems);
  return copy;
}

/** Whether `value` is a mapping: an object that is no list. For values that came through `plainData`. */
export function isMapping(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The same data with the value at a path replaced; whatever is no mapping on the way gives place to one. */
export function putAt(group: Plain, [key, ...rest]: readonly string[], value: unknown): Plain {
  const below = Object.hasOwn(group, key) ? group[key] : undefined;
  return { ...group, [key]: rest.length ? putAt(isMapping(below) ? below : {}, rest, value) : value };
}

/** The same data with the keys of every mapping in order, so that equal data give equal text. */
export function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (!isMapping(value)) return value;
  const keys = Object.keys(value).sort();
  return Object.fromEntries(keys.map((key) => [key, inOrder(value[key])]));
}

function copyOf(value: unknown, path: string[], budget: { left: number }, problems: Problem[]): unknown {
  const here = path.join('.') || 'file';
  if (--budget.left < 0) refuse('too-large', here, typeof value, `holds more than ${MOST_VALUES} values`);
  if (typeof value === 'number') return value + 0;
  if (typeof value !== 'object' || value === null) return value;
  if (path.length > DEEPEST)
    refuse('too-large', here, typeof value, `is nested more than ${DEEPEST} levels deep`);
  if (Array.isArray(value)) {
    if (value.length > MOST_VALUES)
      refuse('too-large', here, 'list', `holds more than ${MOST_VALUES} values`);
    return Array.from(value, (item, i) => copyOf(item, [...path, String(i)], budget, problems));
  }
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== null && Object.getPrototypeOf(prototype) !== null)
    refuse('wrong-type', here, typeof value, 'must be a plain value, mapping or list');
  const copy: Plain = {};
  for (const [key, item] of Object.entries(value)) {
    const at = [...path, key];
    if (FORBIDDEN.has(key))
      problems.push(problemOf('unknown-key', at.join('.'), typeof item, 'is no key that can be used here'));
    else if (item !== undefined) copy[key] = copyOf(item, at, budget, problems);
  }
  return copy;
}

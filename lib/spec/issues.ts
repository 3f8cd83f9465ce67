import type * as z from 'zod';
import { codeOfNumber, type ProblemCode } from '../problemCode.js';
import type { Problem } from '../refusal.js';
import { describeGuide, nearestTo } from './advice.js';
import { formFor, formsOf, type Guide, guide, guideAt, guideOf, knownPaths, wordsOf } from './guide.js';
import { kindMeant } from './kinds.js';
import { namePattern } from './name.js';
import { closest } from './nearest.js';

/** A problem together with the place in the data where it stands. */
export interface Finding extends Problem {
  path: string[];
}

/** A finding without its place: what is told of it. */
export function problemIn({ code, parameter, value, rule, nearest }: Finding): Problem {
  return { code, parameter, value, rule, nearest };
}

type Issue = z.core.$ZodIssue;

/**
 * The problems behind what zod found, perhaps several for one place: parameter, value, rule and what would work, all taken
 * from the schema, so that messages and schema cannot disagree.
 * @param data plain data that was parsed
 */
export function findingsOf(issues: readonly Issue[], data: unknown): Finding[] {
  return issues.flatMap((issue) => expand(issue, [], data));
}

function expand(issue: Issue, base: readonly string[], data: unknown): Finding[] {
  const path = [...base, ...issue.path.map(String)];
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey([...path, key], data));
  if (issue.code === 'invalid_union') {
    // The form that was meant is the one whose faults lie inside it; with none, the value itself is the fault.
    const meant = issue.errors.find((errors) =>
      errors.every((e) => e.path.length || e.code === 'unrecognized_keys'),
    );
    if (meant) return meant.flatMap((inner) => expand(inner as Issue, path, data));
  }
  return [wrongValue(path, data)];
}

function wrongValue(path: string[], data: unknown): Finding {
  const value = valueAt(path, data);
  const node = guideAt(path, data) ?? guide();
  const required = value === undefined ? 'is required: ' : 'must be ';
  const nearest = offersFor(path, node, value, data);
  const rule = required + describeGuide(node);
  return { code: codeOf(node, value), path, parameter: path.join('.') || 'file', value, rule, nearest };
}

function codeOf(node: Guide, value: unknown): ProblemCode {
  if (value === undefined) return 'missing';
  if (node.type === 'number' || node.type === 'integer') return codeOfNumber(value, node.type === 'integer');
  if (typeof value !== 'string' && typeof value !== 'boolean') return 'wrong-type';
  if (formsOf(node).some((form) => wordsOf(form).length)) return 'not-one-of';
  if (node.type !== 'string' || typeof value !== 'string') return 'wrong-type';
  return node.pattern === namePattern ? 'bad-name' : 'wrong-form';
}

/** A shape is better guessed from the sizes beside it than from its own spelling. */
function offersFor(path: string[], node: Guide, value: unknown, data: unknown): unknown[] {
  // What else the file holds says which kind is meant.
  if (path.length === 1 && path[0] === 'kind') return [kindMeant(data)];
  if (path[path.length - 1] !== 'shape') return nearestTo(node, value);
  const beside = Object.keys((valueAt(path.slice(0, -1), data) as object) ?? {});
  const forms = formsOf(guideAt(path.slice(0, -1), data)!).filter(
    ({ properties }) => properties?.shape?.const !== undefined,
  );
  const fits = forms.filter((form) => beside.every((key) => Object.hasOwn(form.properties!, key)));
  // A shape that needs no size beyond those that are there comes before one that does.
  const whole = fits.filter(({ required = [] }) =>
    required.every((key) => key === 'shape' || beside.includes(key)),
  );
  const shapes = (whole.length ? whole : fits).map((form) => String(form.properties!.shape.const));
  if (!shapes.length) return nearestTo(node, value);
  return typeof value === 'string' ? [closest(value, shapes)] : shapes;
}

function unknownKey(path: string[], data: unknown): Finding {
  const key = path[path.length - 1];
  const group = path.slice(0, -1);
  const prefix = group.map((part) => `${part}.`).join('');
  const node = guideAt(group, data) ?? guideOf(kindMeant(data));
  const form = formFor(node, valueAt(group, data)) ?? node;
  // The right key in the wrong group is moved rather than renamed.
  const elsewhere = knownPaths(guideOf(kindMeant(data))).filter(
    (known) => known !== prefix + key && (known === key || known.endsWith(`.${key}`)),
  );
  const near = closest(key, Object.keys(form.properties ?? {}));
  const nearest = elsewhere.length ? elsewhere.slice(0, 3) : near === undefined ? [] : [prefix + near];
  return {
    code: 'unknown-key',
    path,
    parameter: path.join('.'),
    value: valueAt(path, data),
    rule: key.includes('.') ? 'unknown key (write groups as nested mappings)' : 'unknown key',
    nearest,
  };
}

/** The findings to show: a required parameter that is only misspelt is one problem, not two. */
export function withoutMisspelt(findings: readonly Finding[]): Finding[] {
  const meant = new Set(findings.filter((f) => f.code === 'unknown-key').map((f) => f.nearest[0]));
  return findings.filter((f) => f.code === 'unknown-key' || f.value !== undefined || !meant.has(f.parameter));
}

/** The value at `path`, own keys only; undefined where there is none. */
function valueAt(path: readonly string[], data: unknown): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string, unknown>)[key];
  }
  return value;
}

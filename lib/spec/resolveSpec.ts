import { type Problem, problemOf, Refusal } from '../refusal.js';
import { complete } from './complete.js';
import { type Finding, findingsOf, problemIn, withoutMisspelt } from './issues.js';
import { type FileSpec, kindMeant, parseFile } from './kinds.js';
import { withModuleGiven } from './moduleGiven.js';
import { nearestName } from './name.js';
import { isMapping, plainData } from './plainData.js';
import { fromTo, ranges } from './ranges.js';
import { rulesFor } from './rules.js';
import type { Kind, Spec, SpecOf } from './types.js';
import { variantFindings } from './variants.js';

/** More problems than this are only counted. */
const MOST_PROBLEMS = 100;

/**
 * A parameter file's content, checked and with every default filled in. Lengths in mm, angles in degrees.
 * Resolving what was resolved changes nothing. `variants` are checked and left out.
 * @param object plain data with the keys that `specJsonSchema` lists; unknown keys are refused
 * @param fallbackName base name where the file gives none; characters that cannot stand in a name are replaced
 * [one after the kind, such as planetary-set]
 * @throws Refusal with every problem found: parameter, value, rule, nearest values that work
 * @example resolveSpec({ kind: 'planetary', module: 1.5, faceWidth: 20, sun: { teeth: 15 }, planets: { teeth: 15, count: 5 } })
 */
export function resolveSpec<T extends { kind: Kind }>(object: T, fallbackName?: string): SpecOf<T['kind']>;
export function resolveSpec(object: unknown, fallbackName?: string): Spec;
export function resolveSpec(object: unknown, fallbackName = ''): Spec {
  const data = plainData(object);
  const parsed = parseFile(data);
  const findings = valueFindings(data, parsed.issues);
  const file = findings.length ? fileWithOffers(data, findings) : parsed.file;
  const spec = file && complete(file, nearestName(fallbackName, ''));
  const problems: Problem[] = withoutMisspelt(findings).map(problemIn);
  if (file && spec) problems.push(...ruleProblems(spec, file, findings));
  if (problems.length) throw new Refusal(shortened(problems));
  return withModuleGiven(spec!, file?.transverseModule);
}

/**
 * The file with an offer in place of each faulty value. Offers that break a rule with other values are replaced,
 * in the findings too, by what that rule offers.
 */
function fileWithOffers(data: unknown, findings: Finding[]): FileSpec | undefined {
  for (let round = 0; ; round++) {
    const { file } = parseFile(repaired(data, findings));
    if (!file || round === OFFER_ROUNDS) return file;
    const broken = ruleProblems(complete(file, ''), file, []);
    for (const finding of findings) {
      const better = broken.find(({ parameter }) => parameter === finding.parameter);
      if (better && finding.code !== 'unknown-key') finding.nearest = better.nearest;
    }
    if (!broken.length) return file;
  }
}

/**
 * The data with each problem's first offer in place and unknown keys left out, so that the rules between the
 * other values can still be checked. Never shown to anyone.
 */
function repaired(data: unknown, findings: readonly Finding[]): unknown {
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

/** Enough for a change in one offer to reach the others that depend on it. */
const OFFER_ROUNDS = 4;

/** Rules are left out where a parameter they read has a problem of its own, of the schema or of an earlier rule. */
function ruleProblems(spec: Spec, file: FileSpec, findings: readonly Finding[]): Problem[] {
  const bad = findings.filter((f) => f.code !== 'unknown-key').map((f) => f.parameter);
  const touched = (need: string) =>
    bad.some((path) => path === need || path.startsWith(`${need}.`) || need.startsWith(`${path}.`));
  const problems: Problem[] = [];
  for (const { needs, find } of rulesFor(spec.kind)) {
    if (bad.includes('transverseModule')) bad.push('module');
    if (needs.some(touched)) continue;
    const found = find(spec, file);
    problems.push(...found);
    bad.push(...found.map(({ parameter }) => parameter));
  }
  return problems;
}

/**
 * Problems of single values in plain data, rules between values left out.
 * @param issues what the schema found, where that is known already
 */
export function valueFindings(data: unknown, issues = parseFile(data).issues): Finding[] {
  return onePerPlace([
    ...(isMapping(data) ? moduleFindings(data) : []),
    ...findingsOf(issues, data),
    ...(isMapping(data) ? variantFindings(data.variants, kindMeant(data)) : []),
  ]);
}

function onePerPlace(findings: readonly Finding[]): Finding[] {
  const places = new Map<string, Finding>();
  for (const finding of findings) if (!places.has(finding.parameter)) places.set(finding.parameter, finding);
  return [...places.values()];
}

/** The module is given once: as normal or as transverse module. */
function moduleFindings(data: Record<string, unknown>): Finding[] {
  const { module, transverseModule } = data;
  if (module === undefined && transverseModule === undefined) {
    const rule = `is required: a number ${fromTo(ranges.module)} mm (or transverseModule in its place)`;
    return [{ path: ['module'], ...problemOf('missing', 'module', undefined, rule, [1.5]) }];
  }
  if (module === undefined || transverseModule === undefined) return [];
  const rule = 'must be left out where module is given';
  const problem = problemOf('excluded', 'transverseModule', transverseModule, rule);
  return [{ path: ['transverseModule'], ...problem }];
}

function shortened(problems: Problem[]): [Problem, ...Problem[]] {
  const [first, ...rest] = problems.slice(0, MOST_PROBLEMS);
  const left = problems.length - MOST_PROBLEMS;
  if (left > 0) rest.push(problemOf('not-listed', 'file', `${left} more`, 'problems are not listed'));
  return [first, ...rest];
}

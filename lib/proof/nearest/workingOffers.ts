import { type Problem, Refusal, unlessRefused } from '../../refusal.js';
import { guideAt } from '../../spec/guide.js';
import { ceilThousandth, floorThousandth } from '../../spec/nearest.js';
import { isMapping, type Plain, putAt } from '../../spec/plainData.js';
import { resolveSpec } from '../../spec/resolveSpec.js';
import type { Spec } from '../../spec/types.js';
import { nearestThat } from './nearestThat.js';
import { searchOf } from './searchOf.js';
import { works } from './works.js';

/** More problems than this are not all looked into. */
const MOST_TRIED = 3;

/**
 * `resolveSpec`, whose refusals offer values that have been tried on all of it.
 * @throws Refusal as there
 */
export function resolveTried(object: unknown, fallbackName?: string): Spec {
  try {
    return resolveSpec(object, fallbackName);
  } catch (error) {
    throw error instanceof Refusal ? workingOffers(error, object) : error;
  }
}

/**
 * The same refusal with offers that make a set. A value in range may still leave teeth without tips: then the offer is
 * moved on, away from the refused value, to the nearest one that works while the other offers are in place too.
 * @param object the file that was refused
 */
export function workingOffers(refusal: Refusal, object: unknown): Refusal {
  if (!isMapping(object)) return refusal;
  // Variants have nothing to do with whether a set works, and may be many.
  const offered = refusal.problems.reduce(withOffer, { ...object, variants: undefined });
  if (isWorking(offered)) return refusal;
  const problems = [...refusal.problems];
  for (const [i, problem] of problems.slice(0, MOST_TRIED).entries()) {
    const better = movedOn(problem, offered) ?? following(problem, offered) ?? usualGroup(problem, offered);
    if (better === undefined) continue;
    problems[i] = { ...problem, nearest: [better] };
    break;
  }
  const [first, ...rest] = problems;
  return new Refusal([first, ...rest]);
}

/** Of a number that was refused: the nearest value beyond the offer that works; undefined for anything else. */
function movedOn({ parameter, value, nearest: [offer] }: Problem, file: Plain): number | undefined {
  if (typeof value !== 'number' || typeof offer !== 'number' || value === offer || Number.isNaN(value))
    return undefined;
  const path = parameter.split('.');
  const { minimum, maximum, type } = guideAt(path, file) ?? {};
  const end = value > offer ? minimum : maximum;
  if (end === undefined) return undefined;
  const rounded = type === 'integer' ? Math.round : value > offer ? floorThousandth : ceilThousandth;
  return nearestThat(offer, end, rounded, (tried) => isWorking(putAt(file, path, tried)));
}

/**
 * Of a number that was refused and that others decide: the one that follows from them where it is left out, or with
 * profile shifts found. Where sun and planets fix a ring's shift no step on the way from the offer meets it.
 */
function following({ parameter, value, nearest: [offer] }: Problem, file: Plain): number | undefined {
  if (typeof value !== 'number' || typeof offer !== 'number') return undefined;
  const path = parameter.split('.');
  for (const change of [{}, { profileShift: 'solve' }]) {
    const follows = valueWithout({ ...file, ...change }, path);
    if (follows !== undefined && follows !== value && isWorking(putAt(file, path, follows))) return follows;
  }
  return undefined;
}

/** Where a single value was given for a group, and the group that it was taken for does not work: the usual one. */
function usualGroup({ parameter, nearest: [offer] }: Problem, file: Plain): unknown {
  if (!isMapping(offer)) return undefined;
  const path = parameter.split('.');
  const { default: given, examples, required } = guideAt(path, file) ?? {};
  const usual = given ?? examples?.[0] ?? (required ? undefined : {});
  return usual !== undefined && isWorking(putAt(file, path, usual)) ? usual : undefined;
}

/** The number that a file has at a path where it is given none; shifts of a set are found where it asks for that. */
function valueWithout(file: Plain, path: string[]): number | undefined {
  return unlessRefused(() => {
    const spec = resolveSpec(putAt(file, path, undefined));
    const follows = searchOf(spec).follows(spec, path.join('.'));
    if (follows !== undefined) return follows;
    const value = path.reduce<unknown>((group, key) => (isMapping(group) ? group[key] : undefined), spec);
    return typeof value === 'number' ? value : undefined;
  }, undefined);
}

function isWorking(file: Plain): boolean {
  return unlessRefused(() => works(resolveSpec(file)), false);
}

function withOffer(file: Plain, { code, parameter, nearest }: Problem): Plain {
  const gone = nearest.length === 0 || code === 'unknown-key';
  return putAt(file, parameter.split('.'), gone ? undefined : nearest[0]);
}

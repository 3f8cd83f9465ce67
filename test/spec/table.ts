import { problemCodes } from '../../lib/problemCode.js';
import { Refusal } from '../../lib/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';

/** A parameter file as data, with whatever a test puts in it. */
// biome-ignore lint/suspicious/noExplicitAny: tests write values of every wrong type into it
export type File = Record<string, any>;

/** Least file of the invented exhibit table: a spinner of five planets. */
export const spinner = (): File => ({
  kind: 'planetary',
  module: 1.5,
  faceWidth: 20,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 5 },
});

/** The spinner with the value at a dotted path replaced; `undefined` takes it out. */
export function withValue(path: string, value: unknown, base: File = spinner()) {
  const keys = path.split('.');
  const last = keys.pop()!;
  let group = base;
  for (const key of keys) {
    group[key] ??= {};
    group = group[key];
  }
  if (value === undefined) delete group[last];
  else group[last] = value;
  return base;
}

type Resolver = (object: never) => unknown;

/** The problems of a file; an empty list where it resolves. Anything thrown but a Refusal goes through. */
export function problemsOf(object: unknown, resolve: Resolver = resolveSpec) {
  try {
    resolve(object as never);
    return [];
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const strange = error.problems.find(({ code }) => !Object.hasOwn(problemCodes, code));
    if (strange) throw new Error(`no known code: ${JSON.stringify(strange)}`);
    return [...error.problems];
  }
}

/** The only problem of a file. */
export function soleProblem(object: unknown, resolve?: Resolver) {
  const problems = problemsOf(object, resolve);
  if (problems.length !== 1) throw new Error(`expected one problem, found: ${JSON.stringify(problems)}`);
  return problems[0];
}

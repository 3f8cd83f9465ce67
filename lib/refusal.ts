import type { ProblemCode } from './problemCode.js';
import { visible } from './visible.js';

/** One thing wrong with what was asked: which parameter, what it held, the rule it breaks, what would work. */
export interface Problem {
  /** Name of the rule, which stays when its words change. */
  code: ProblemCode;
  /** Dotted path of the parameter as written in the file, for example `planets.teeth`. */
  parameter: string;
  /** The value received, as it was received. */
  value: unknown;
  /** The rule that the value breaks, in one short clause. */
  rule: string;
  /** The nearest values that would work, best first; empty when none can be named. */
  nearest: readonly unknown[];
}

/**
 * The one error class of the project. Every function that can refuse throws it, with every problem found
 * collected in `problems`; the first one is also spread onto the error itself.
 */
export class Refusal extends Error {
  readonly code: ProblemCode;
  readonly parameter: string;
  readonly value: unknown;
  readonly rule: string;
  readonly nearest: readonly unknown[];

  constructor(readonly problems: readonly [Problem, ...Problem[]]) {
    super(problems.map(describeProblem).join('\n'));
    this.name = 'Refusal';
    const [first] = problems;
    this.code = first.code;
    this.parameter = first.parameter;
    this.value = first.value;
    this.rule = first.rule;
    this.nearest = first.nearest;
  }
}

/** A problem as plain data. */
export function problemOf(
  code: ProblemCode,
  parameter: string,
  value: unknown,
  rule: string,
  nearest: readonly unknown[] = [],
): Problem {
  return { code, parameter, value, rule, nearest };
}

/** Throws a `Refusal` holding a single problem. */
export function refuse(...problem: Parameters<typeof problemOf>): never {
  throw new Refusal([problemOf(...problem)]);
}

/** Throws a `Refusal` holding all of these problems; nothing happens where there are none. */
export function refuseAll([first, ...rest]: readonly Problem[]): void {
  if (first) throw new Refusal([first, ...rest]);
}

/** What is made, or something else where that is refused; anything thrown but a `Refusal` goes through. */
export function unlessRefused<T, Else>(make: () => T, otherwise: Else): T | Else {
  try {
    return make();
  } catch (error) {
    if (error instanceof Refusal) return otherwise;
    throw error;
  }
}

/** One line for one problem: parameter, value, rule, and what would work. */
export function describeProblem({ parameter, value, rule, nearest }: Problem): string {
  const offer = nearest.length ? `; nearest that works: ${nearest.map(show).join(', ')}` : '';
  return `${clip(parameter)}: ${show(value)}: ${clip(rule, LONGEST_RULE)}${offer}`;
}

const LONGEST_SHOWN = 80;
const LONGEST_RULE = 600;

/** A value as it appears in a message: short, on one line, never an exception of its own. */
function show(value: unknown): string {
  if (value === undefined) return 'missing';
  if (typeof value === 'string') return value.trim() === '' ? JSON.stringify(clip(value)) : clip(value);
  if (typeof value === 'number') return String(value);
  try {
    return clip(JSON.stringify(value) ?? String(value));
  } catch {
    return typeof value;
  }
}

function clip(text: string, longest = LONGEST_SHOWN): string {
  const short = text.length > longest ? `${text.slice(0, longest - 1)}…` : text;
  return visible(short);
}

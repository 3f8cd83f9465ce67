import { unlessRefused } from '../../refusal.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import { ceilThousandth, floorThousandth } from '../../spec/nearest.js';
import { type Plain, putAt } from '../../spec/plainData.js';
import { ranges } from '../../spec/ranges.js';
import { resolveSpec } from '../../spec/resolveSpec.js';
import type { Spec } from '../../spec/types.js';
import { withoutDerived } from '../../spec/withoutDerived.js';
import { nearestThat } from './nearestThat.js';

/** Values of parameters, by dotted path, that take the place of a file's; undefined leaves a value to be found. */
export type Change = Record<string, unknown>;

/** The file with values changed; undefined where it would be refused. */
export function changed<S extends Spec>(spec: S, change: Change): S | undefined {
  let file: Plain = withoutDerived(spec);
  for (const [path, value] of Object.entries(change)) file = putAt(file, path.split('.'), value);
  return unlessRefused(() => resolveSpec(file) as S, undefined);
}

/** A parameter that may be changed by itself. */
export interface Way {
  path: string;
  /** The nearest change of it that works; undefined where none does. */
  find(isWorking: (change: Change) => boolean): Change | undefined;
}

/** What may be changed about the file of one kind. */
export interface Ways {
  /** Each parameter by itself, those that cost the least of what was asked for first. */
  single: Way[];
  /** Other tooth counts, the nearest first. */
  counts(spec: Spec): Change[];
  /** Losses of what was asked for, the least first, with which some tooth counts work where nothing else does. */
  bases: Change[];
}

/** The number nearest to `from`, on the way to one of some ends, in thousandths. */
export function along(path: string, from: number, ...ends: number[]): Way {
  return nearestOn(path, from, ends, (to) => (to < from ? floorThousandth : ceilThousandth));
}

/** The module as the file gives it, which grows. */
export function moduleWay(spec: Spec): Way {
  const { path, value } = moduleGiven(spec);
  return along(path, value, Math.min(ranges.module[1], 4 * value));
}

/** The same for whole numbers. */
export function alongWhole(path: string, from: number, ...ends: number[]): Way {
  return nearestOn(path, from, ends, () => Math.round);
}

/** The first of some values that works. */
export function tried(path: string, values: readonly unknown[]): Way {
  const changes = values.map((value): Change => ({ [path]: value }));
  return { path, find: (isWorking) => changes.find(isWorking) };
}

/** Ways of single parameters, and nothing else. */
export function singly(single: Way[]): Ways {
  return { single, counts: () => [], bases: [] };
}

/** One change, which works or does not. */
export function just(path: string, change: Change): Way {
  const does = Object.keys(change).length > 0;
  return { path, find: (isWorking) => (does && isWorking(change) ? change : undefined) };
}

function nearestOn(
  path: string,
  from: number,
  ends: readonly number[],
  roundingTo: (to: number) => (value: number) => number,
): Way {
  return {
    path,
    find(isWorking) {
      const found = ends.flatMap(
        (to) => nearestThat(from, to, roundingTo(to), (tried) => isWorking({ [path]: tried })) ?? [],
      );
      if (!found.length) return undefined;
      return { [path]: found.reduce((a, b) => (Math.abs(b - from) < Math.abs(a - from) ? b : a)) };
    },
  };
}

import type { Spec } from '../../spec/types.js';
import { type Change, changed, type Ways } from './changes.js';
import { searchOf } from './searchOf.js';
import { worksWith } from './works.js';

/** How many ways are offered. */
const OFFERED = 4;
/** Of these, changes of tooth counts, in sets. */
const COUNTS_OFFERED = 2;

/** What is looked for, and how. */
export interface Search<S extends Spec> {
  /** Whether other tooth counts of a set are looked for [true]. */
  counts?: boolean;
  /** What may be changed [anything that teeth depend on]. */
  ways?: Ways;
  /** A parameter that is looked at before the others [none]. */
  first?: string;
  /** What a change must keep besides what `works` asks [nothing]. */
  more?: (other: S) => boolean;
}

/**
 * The nearest changes that make what cannot be made work: of one parameter where that is enough, of the tooth counts,
 * and where neither helps, of the tooth form and the gap as well. Each one has been tried (`works`).
 * @returns at most four, changes of one parameter first; in theory empty
 */
export function nearestWorking<S extends Spec>(
  spec: S,
  { counts = true, first, more, ways = searchOf(spec).ways(spec) }: Search<S> = {},
): Change[] {
  const isWorking = (change: Change) => worksWith(spec, change, more);
  const set = searchOf(spec).countsHang;
  // The counts of a set hang together, so some are named in any case; those of a pair where nothing else helps.
  const sets = set && counts ? firstOf(ways.counts(spec), COUNTS_OFFERED, isWorking) : [];
  const found = [...singleChanges(ways, OFFERED - sets.length, isWorking, first), ...sets];
  if (found.length || (set && !counts)) return found;
  const others = set ? [] : firstOf(ways.counts(spec), COUNTS_OFFERED, isWorking);
  return others.length ? others : withLosses(spec, ways, isWorking);
}

function singleChanges(
  { single }: Ways,
  most: number,
  isWorking: (change: Change) => boolean,
  first?: string,
): Change[] {
  const ahead = single.filter(({ path }) => path === first);
  const found: Change[] = [];
  for (const { find } of [...ahead, ...single.filter(({ path }) => path !== first)]) {
    if (found.length === most) break;
    const change = find(isWorking);
    if (change) found.push(change);
  }
  return found;
}

/** The least loss of what was asked first. */
function withLosses(spec: Spec, { counts, bases }: Ways, isWorking: (change: Change) => boolean): Change[] {
  for (const base of bases) {
    const other = changed(spec, base);
    if (!other) continue;
    const [first] = firstOf([{}, ...counts(other)], 1, (change) => isWorking({ ...base, ...change }));
    if (first) return [withoutNeedless({ ...base, ...first }, isWorking)];
  }
  return [];
}

/**
 * A change without those of its parameters that it works without. Tooth counts stay together: one that would follow from
 * the others may be given by the file, as it was.
 */
function withoutNeedless(change: Change, isWorking: (change: Change) => boolean): Change {
  let left = change;
  for (const paths of together(Object.keys(change).filter((one) => !one.endsWith('.teeth')))) {
    const others = Object.fromEntries(Object.entries(left).filter(([path]) => !paths.includes(path)));
    if (isWorking(others)) left = others;
  }
  return left;
}

/** Values of which the one follows from the other where a file leaves it out. */
const LINKED = [
  ['lips', 'retention'],
  ['centreDistance', 'profileShift'],
];

/** Paths one by one, but for those that are linked. */
function together(paths: readonly string[]): string[][] {
  const linked = LINKED.filter((pair) => pair.every((path) => paths.includes(path)));
  return [...linked, ...paths.filter((path) => !linked.flat().includes(path)).map((path) => [path])];
}

/** The first items that something holds for. */
export function firstOf<T>(list: readonly T[], most: number, holds: (item: T) => boolean): T[] {
  const found: T[] = [];
  for (const item of list) {
    if (found.length === most) break;
    if (holds(item)) found.push(item);
  }
  return found;
}

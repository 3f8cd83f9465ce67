import type { PlanetarySpec } from '../../spec/types.js';
import { type Change, changed, setChanges, singleChanges, standardForm } from './changes.js';
import { worksWith } from './works.js';

/** How many ways are offered. */
const OFFERED = 4;
/** Of these, sets with other tooth counts. */
const SETS_OFFERED = 2;

/**
 * The nearest changes that make a set which cannot be made work: of one parameter where that is enough, of the tooth
 * counts, and where neither helps, of the tooth form and the gap as well. Each one has been tried (`works`).
 * @param sets whether other tooth counts are looked for [true]
 * @returns at most four, changes of one parameter first; in theory empty
 */
export function nearestWorking(spec: PlanetarySpec, sets = true): Change[] {
  const single = singleChanges(spec, (change) => worksWith(spec, change));
  const others = sets ? firstOf(setChanges(spec), SETS_OFFERED, (change) => worksWith(spec, change)) : [];
  const found = [...single.slice(0, OFFERED - others.length), ...others];
  return found.length || !sets ? found : withStandardForm(spec);
}

/** One sentence for a message: `Nearest that works: fit.gap 0.2; module 1.8`. Empty where nothing was found. */
export function nearestSentence(spec: PlanetarySpec, sets = true): string {
  const found = nearestWorking(spec, sets).map((change) => Object.entries(change).map(sayOne).join(', '));
  return found.length ? `Nearest that works: ${found.join('; ')}.` : '';
}

/** The least loss of what was asked first: the gap alone, the tooth form alone, both. */
function withStandardForm(spec: PlanetarySpec): Change[] {
  const { 'fit.gap': gap, ...form } = standardForm(spec);
  const room = { 'planets.spacing': 'equal', ...(spec.opening ? { opening: undefined } : {}) };
  for (const base of [
    { 'fit.gap': gap },
    form,
    { ...form, 'fit.gap': gap },
    { ...form, 'fit.gap': gap, ...room },
  ]) {
    const other = changed(spec, base);
    if (!other) continue;
    const [first] = firstOf([{}, ...setChanges(other)], 1, (change) =>
      worksWith(spec, { ...base, ...change }),
    );
    if (first) return [{ ...base, ...first }];
  }
  return [];
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

function sayOne([path, value]: [string, unknown]): string {
  return value === undefined ? `${path} left out` : `${path} ${value}`;
}

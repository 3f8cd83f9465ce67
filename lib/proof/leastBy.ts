/**
 * The item with the least figure. One whose figure is no number is the least of all: what cannot be worked out must not
 * hide behind what can, and every check fails on it.
 * @throws RangeError where there are no items: a check of nothing would hold whatever happens
 */
export function leastBy<T>(items: readonly T[], figure: (item: T) => number): T {
  if (!items.length) throw new RangeError('a check has nothing to look at');
  const rank = (item: T) => {
    const value = figure(item);
    return Number.isNaN(value) ? Number.NEGATIVE_INFINITY : value;
  };
  return items.reduce((a, b) => (rank(b) < rank(a) ? b : a));
}

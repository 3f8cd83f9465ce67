/**
 * The first `limit` of many items in order, without keeping the others: most are turned away by one comparison.
 * @param before negative when `a` comes first; a total order, so that the result never depends on the order of
 *   arrival
 */
export function ranked<T>(limit: number, before: (a: T, b: T) => number) {
  const kept: T[] = [];
  return {
    /** In order, best first. */
    kept,
    /** Takes the item in if it is among the first `limit` so far. */
    offer(item: T): void {
      if (kept.length >= limit && before(item, kept[kept.length - 1]) >= 0) return;
      let low = 0;
      let high = kept.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (before(item, kept[middle]) < 0) high = middle;
        else low = middle + 1;
      }
      kept.splice(low, 0, item);
      if (kept.length > limit) kept.pop();
    },
  };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Golden-section search for the best of a function with a single peak between `low` and `high`; each step narrows the
 * interval to 0.618 of itself and costs one evaluation. What was met on the way is the caller's to keep.
 * @param preferred true when the left result is at least as good as the right one
 * @param enough ends the search early [never]
 * @returns the better of the last two results
 */
export function golden<T>(
  [low, high]: [number, number],
  steps: number,
  at: (x: number) => T,
  preferred: (left: T, right: T) => boolean,
  enough: (found: T) => boolean = () => false,
): T {
  let [one, two] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [left, right] = [at(one), at(two)];
  for (let step = 0; step < steps && low < high; step++) {
    if (enough(left) || enough(right)) break;
    if (preferred(left, right)) {
      [high, two, right] = [two, one, left];
      one = high - GOLDEN * (high - low);
      left = at(one);
    } else {
      [low, one, left] = [one, two, right];
      two = low + GOLDEN * (high - low);
      right = at(two);
    }
  }
  return preferred(left, right) ? left : right;
}

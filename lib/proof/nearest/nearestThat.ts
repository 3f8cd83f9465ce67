/** Values between the first and the last one that are tried, closer together at first. */
const STEPS = 24;
/** Halvings between the first value that works and the one before it. */
const HALVINGS = 5;

/**
 * The value nearest to `from`, towards `to`, that works: found among growing steps, then narrowed down.
 * @param rounded makes a value presentable
 * @returns undefined where none of those tried does
 */
export function nearestThat(
  from: number,
  to: number,
  rounded: (value: number) => number,
  works: (value: number) => boolean,
): number | undefined {
  let before = from;
  for (let i = 1; i <= STEPS; i++) {
    const value = rounded(from + (to - from) * (i / STEPS) ** 2);
    if (value === before) continue;
    if (works(value)) return narrowed(before, value, rounded, works);
    before = value;
  }
  return undefined;
}

function narrowed(
  fails: number,
  works: number,
  rounded: (value: number) => number,
  test: (value: number) => boolean,
): number {
  let [bad, good] = [fails, works];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = rounded((bad + good) / 2);
    if (middle === bad || middle === good) break;
    if (test(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

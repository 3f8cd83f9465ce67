import fc from 'fast-check';

/**
 * Any number from `min` to `max`, everywhere alike. `fc.double` draws every double alike, and half of those between 0 and 1 are
 * less than 1e-154: from a range that holds 0 hardly anything but 0 comes.
 */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);
}

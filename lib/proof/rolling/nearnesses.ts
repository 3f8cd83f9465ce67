import { mayBeNearer, type Strand, strandsApart } from './outlineDistance.js';

/** Segments of a tooth by number: see `ToothProfile.segments`. */
const FLANKS = [2, 4] as const;

/** Least distance overall, and on either flank of the first gear, up to a margin, mm. */
export function nearnesses(
  first: readonly Strand[],
  mate: readonly Strand[],
  margin: number,
): [number, number, number] {
  const clockwise = least(first, FLANKS[0], mate, margin);
  const counter = least(first, FLANKS[1], mate, margin);
  const elsewhere = Math.min(clockwise, counter);
  return [least(first, null, mate, elsewhere), clockwise, counter];
}

/** Least distance of the strands on one flank (null: on none) from others, or `bound`. */
function least(
  ones: readonly Strand[],
  flank: number | null,
  others: readonly Strand[],
  bound: number,
): number {
  let found = bound;
  for (const one of ones) {
    const onFlank = one.segment === FLANKS[0] || one.segment === FLANKS[1];
    if (flank === null ? onFlank : one.segment !== flank) continue;
    for (const other of others) if (mayBeNearer(one, other, found)) found = strandsApart(one, other, found);
  }
  return found;
}

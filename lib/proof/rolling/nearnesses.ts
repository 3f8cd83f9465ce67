import { mayBeNearer, type Strand, strandsApart } from './outlineDistance.js';

/** Segments of a tooth by number: see `ToothProfile.segments`. */
const FLANKS = [2, 4] as const;

/** Least distance overall, and on either flank of the first gear, up to a margin, mm. */
export function nearnesses(
  first: readonly Strand[],
  mate: readonly Strand[],
  margin: number,
): [number, number, number] {
  const onFlank = (flank: number) =>
    least(
      first.filter(({ segment }) => segment === flank),
      mate,
      margin,
    );
  const [clockwise, counter] = FLANKS.map(onFlank);
  const elsewhere = first.filter(({ segment }) => segment !== FLANKS[0] && segment !== FLANKS[1]);
  return [least(elsewhere, mate, Math.min(clockwise, counter)), clockwise, counter];
}

/** Least distance between two lots of strands, or `bound`. */
function least(ones: readonly Strand[], others: readonly Strand[], bound: number): number {
  let found = bound;
  for (const one of ones)
    for (const other of others) if (mayBeNearer(one, other, found)) found = strandsApart(one, other, found);
  return found;
}

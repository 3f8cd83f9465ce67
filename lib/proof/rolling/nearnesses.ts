import { mayBeNearer, type Strand, strandsApart } from './outlineDistance.js';

/** Segments of a tooth by number: see `ToothProfile.segments`. */
const FLANKS = [2, 4] as const;

/** Least distance overall, and on either flank of the first gear, up to a margin, mm. */
export function nearnesses(
  first: readonly Strand[],
  mate: readonly Strand[],
  margin: number,
): [number, number, number] {
  const least = (chosen: readonly Strand[], bound: number) => {
    let found = bound;
    for (const p of chosen)
      for (const m of mate) if (mayBeNearer(p, m, found)) found = strandsApart(p, m, found);
    return found;
  };
  const [clockwise, counter] = FLANKS.map((flank) =>
    least(
      first.filter(({ segment }) => segment === flank),
      margin,
    ),
  );
  const elsewhere = first.filter(({ segment }) => segment !== FLANKS[0] && segment !== FLANKS[1]);
  return [least(elsewhere, Math.min(clockwise, counter)), clockwise, counter];
}

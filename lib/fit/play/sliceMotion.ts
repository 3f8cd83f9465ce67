/**
 * How far a part's outline seems to turn at a place of a slice, radians: it turns, and what rises shows the slice below,
 * which on a helix is turned.
 * @param at where the part's motion begins
 * @param twist of its helix, radians/mm
 * @param x, y the place from the part's axis, mm
 */
export function turnAt(motions: Float64Array, at: number, twist: number, x: number, y: number): number {
  return motions[at + 5] - twist * (motions[at + 2] + motions[at + 3] * y - motions[at + 4] * x);
}

/**
 * Writes the slopes for one part's motion from those for its shift in a slice and its turn there.
 * @param at where to write six numbers
 * @param nx, ny mm for each mm of shift
 * @param perTurn mm for each radian
 * @param height of the slice above mid face, mm
 */
export function writeSliceSlopes(
  into: Float64Array,
  at: number,
  nx: number,
  ny: number,
  perTurn: number,
  twist: number,
  height: number,
  x: number,
  y: number,
): void {
  const perRise = -twist * perTurn;
  into[at] = nx;
  into[at + 1] = ny;
  into[at + 2] = perRise;
  into[at + 3] = -ny * height + perRise * y;
  into[at + 4] = nx * height - perRise * x;
  into[at + 5] = perTurn;
}

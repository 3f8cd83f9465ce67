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

/**
 * A part that leans shows its outline longer along the lean, by half its square (1 / cos to the second order): how far
 * that carries a place along `direction`, mm. Its axis leans by (ω_y, −ω_x) for each mm of height.
 * @param at where the part's motion begins
 * @param x, y the place from the part's axis, mm
 * @param nx, ny direction, of any length
 */
export function stretch(
  motions: Float64Array,
  at: number,
  x: number,
  y: number,
  nx: number,
  ny: number,
): number {
  const leanX = motions[at + 4];
  const leanY = -motions[at + 3];
  return ((leanX * x + leanY * y) * (leanX * nx + leanY * ny)) / 2;
}

/**
 * Adds what the stretch changes for each number of a part's motion.
 * @param into slopes of the part from `to` on @param sign 1 or −1
 */
export function addStretchSlopes(
  into: Float64Array,
  to: number,
  motions: Float64Array,
  at: number,
  x: number,
  y: number,
  nx: number,
  ny: number,
  sign: 1 | -1,
): void {
  const leanX = motions[at + 4];
  const leanY = -motions[at + 3];
  const along = (sign * (leanX * nx + leanY * ny)) / 2;
  const out = (sign * (leanX * x + leanY * y)) / 2;
  into[to + 3] -= y * along + ny * out;
  into[to + 4] += x * along + nx * out;
}

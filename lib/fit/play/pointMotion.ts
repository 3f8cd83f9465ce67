/** x, y, z, mm. */
export type Vector = readonly [number, number, number];

/** How far a point moves along x with its part, mm. @param at where the part's motion begins @param y, z from its centre */
export function movedX(motions: Float64Array, at: number, y: number, z: number): number {
  return motions[at] + motions[at + 4] * z - motions[at + 5] * y;
}

/** As `movedX`, along y. */
export function movedY(motions: Float64Array, at: number, x: number, z: number): number {
  return motions[at + 1] + motions[at + 5] * x - motions[at + 3] * z;
}

/** As `movedX`, along z. */
export function movedZ(motions: Float64Array, at: number, x: number, y: number): number {
  return motions[at + 2] + motions[at + 3] * y - motions[at + 4] * x;
}

/**
 * Writes how much a point moves along a direction for each number of its part's motion.
 * @param nx, ny, nz the direction @param x, y, z the point from the part's centre, mm @param at where to write six numbers
 */
export function writeSlopes(
  into: Float64Array,
  at: number,
  nx: number,
  ny: number,
  nz: number,
  x: number,
  y: number,
  z: number,
): void {
  into[at] = nx;
  into[at + 1] = ny;
  into[at + 2] = nz;
  into[at + 3] = y * nz - z * ny;
  into[at + 4] = z * nx - x * nz;
  into[at + 5] = x * ny - y * nx;
}

/**
 * What turning carries a point by to the second order, ½ ω × (ω × r), along a direction, mm; of any length.
 * @param x, y, z the point from its part's centre, mm
 */
export function bent(
  motions: Float64Array,
  at: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const a = motions[at + 3];
  const b = motions[at + 4];
  const c = motions[at + 5];
  const along = a * x + b * y + c * z;
  const square = a * a + b * b + c * c;
  return (along * (a * nx + b * ny + c * nz) - square * (x * nx + y * ny + z * nz)) / 2;
}

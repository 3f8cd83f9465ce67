/** Roll angle ψ of the involute point at `radius`: 0 at and below the base circle. */
export function rollAt(baseRadius: number, radius: number): number {
  const ratio = radius / baseRadius;
  return ratio > 1 ? Math.sqrt(ratio * ratio - 1) : 0;
}

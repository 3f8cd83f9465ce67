/**
 * Involute function inv α = tan α − α.
 * @param angle pressure angle α, radians, |α| < π/2
 * @returns polar angle of the involute, radians
 * Source: ISO 21771, involute function.
 */
export function involute(angle: number): number {
  return Math.tan(angle) - angle;
}

/**
 * The angle whose involute function is `value`.
 * @param value inv α, radians; any finite number (negative gives a negative angle)
 * @returns α, radians, to within the rounding of doubles
 * Method: cube-root start (inv α ≈ α³/3), then Newton with d(inv α)/dα = tan² α.
 */
export function inverseInvolute(value: number): number {
  if (value === 0) return 0;
  const target = Math.abs(value);
  // For large values tan α dominates; starting from atan keeps Newton's method below π/2.
  let angle = target < 1.5 ? Math.min(Math.cbrt(3 * target), 1.2) : Math.atan(target + Math.PI / 2);
  for (let step = 0; step < 50; step++) {
    const tangent = Math.tan(angle);
    const change = (tangent - angle - target) / (tangent * tangent);
    angle -= change;
    if (Math.abs(change) < 1e-16) break;
  }
  return value < 0 ? -angle : angle;
}

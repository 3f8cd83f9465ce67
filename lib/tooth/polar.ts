/** The point at a radius and a polar angle (radians) about the origin. */
export function polar(radius: number, angle: number): [number, number] {
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

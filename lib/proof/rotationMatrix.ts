/**
 * The rotation by the angle and about the axis of a rotation vector, row by row.
 * @param x,y,z radians
 * Source: Rodrigues' rotation formula.
 */
export function rotationMatrix(x: number, y: number, z: number): number[] {
  const angle = Math.hypot(x, y, z);
  const sine = angle < 1e-8 ? 1 : Math.sin(angle) / angle;
  const rest = angle < 1e-4 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
  return [
    1 - rest * (y * y + z * z),
    rest * x * y - sine * z,
    rest * x * z + sine * y,
    rest * x * y + sine * z,
    1 - rest * (x * x + z * z),
    rest * y * z - sine * x,
    rest * x * z - sine * y,
    rest * y * z + sine * x,
    1 - rest * (x * x + y * y),
  ];
}

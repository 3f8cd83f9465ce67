import { type Gear, gearSizes } from '../../lib/tooth/gear.js';

/**
 * Points of one nominal right-hand flank by the parametric involute, moved along the true helix: an independent
 * way to the same surface. The space it bounds (the one at +x) is symmetric about the x axis at z = 0.
 * @param roll tangent length over base radius
 */
export function flankPoint(gear: Gear, roll: number, z = 0): [number, number, number] {
  const { baseRadius, referenceRadius, helixAngle, transversePressureAngle, ...sizes } = gearSizes(gear);
  const atReference = Math.tan(transversePressureAngle);
  // Polar angle that the unwound involute has on the reference circle.
  const start = atReference - Math.atan(atReference);
  const halfSpace = gear.internal
    ? sizes.halfThicknessAngle
    : Math.PI / gear.teeth - sizes.halfThicknessAngle;
  // The flank at +y: an external tooth leans away from the space as the radius grows, a ring's towards it.
  const turn = halfSpace + (gear.internal ? start : -start) + (z * Math.tan(helixAngle)) / referenceRadius;
  const side = gear.internal ? -1 : 1;
  const x = baseRadius * (Math.cos(roll) + roll * Math.sin(roll));
  const y = side * baseRadius * (Math.sin(roll) - roll * Math.cos(roll));
  return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn), z];
}

/**
 * Least distance from a point to the flank of `flankPoint`, and the radius of the nearest point, by narrowing a
 * grid; helical when `zRange` > 0.
 */
export function nearestOnFlank(gear: Gear, from: readonly [number, number, number], zRange: number) {
  const { baseRadius } = gearSizes(gear);
  let best = { roll: 0.4, z: 0, distance: Number.POSITIVE_INFINITY };
  let rollStep = 0.05;
  let zStep = zRange / 8;
  const at = (roll: number, z: number) => {
    const [x, y, height] = flankPoint(gear, roll, z);
    const distance = Math.hypot(x - from[0], y - from[1], height - from[2]);
    if (distance < best.distance) best = { roll, z, distance };
  };
  for (let roll = 0; roll <= 1.6; roll += rollStep) for (let i = -8; i <= 8; i++) at(roll, i * zStep);
  while (rollStep * baseRadius > 1e-7) {
    const { roll, z } = best;
    for (let i = -4; i <= 4; i++)
      for (let j = -4; j <= 4; j++) at(Math.max(0, roll + (i * rollStep) / 4), z + (j * zStep) / 4);
    rollStep *= 0.5;
    zStep *= 0.5;
  }
  return { distance: best.distance, radius: baseRadius * Math.hypot(1, best.roll) };
}

/** The distance alone. */
export function distanceToFlank(gear: Gear, from: readonly [number, number, number], zRange: number): number {
  return nearestOnFlank(gear, from, zRange).distance;
}

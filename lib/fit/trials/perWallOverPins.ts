import { radians } from '../../tooth/gear.js';

/** A gear with pins in its tooth spaces. Lengths in mm, angles in degrees. */
export interface PinnedGear {
  teeth: number;
  internal: boolean;
  /** Diameter of the base circle. */
  baseDiameter: number;
  /** Normal pressure angle. */
  pressureAngle: number;
  helixAngle: number;
  /** Diameter of the pins. */
  pin: number;
  /** Size over the pins, for an internal gear between them. */
  size: number;
}

/**
 * How much the size over pins grows for each mm by which the flanks stand out along their normal: a pin's centre lies
 * where the involute's pressure angle α has cos α = base diameter / diameter through the pin centres, and moves out by
 * 1 / (sin α · cos β_b) (β_b: base helix angle); by its negative inside a ring. With an odd number of teeth the pins
 * stand cos(90° / teeth) closer.
 * Source: ISO 21771, dimension over balls and pins (from memory), differentiated.
 */
export function perWallOverPins(gear: PinnedGear): number {
  const { teeth, internal, baseDiameter, pressureAngle, helixAngle, pin, size } = gear;
  const closer = teeth % 2 ? Math.cos(Math.PI / 2 / teeth) : 1;
  const centres = (internal ? size + pin : size - pin) / closer;
  const outward = Math.sqrt(1 - (baseDiameter / centres) ** 2);
  const cosBaseHelix = Math.sqrt(1 - (Math.sin(radians(helixAngle)) * Math.cos(radians(pressureAngle))) ** 2);
  return ((internal ? -2 : 2) * closer) / (outward * cosBaseHelix);
}

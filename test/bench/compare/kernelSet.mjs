// The same set made by a general solid kernel: outlines extruded with a twist, halves mirrored and joined, bevels cut
// by cones, bore and rim by booleans.
import { CrossSection, kernel } from './kernel.mjs';

/** Makes every part; `kinds` as in compareKernel. */
export function kernelSet(kinds) {
  const parts = [];
  for (const { outline, levels, twist, half, internal, bevelSize, tipRadius, bore, rim, places } of kinds) {
    const section = CrossSection.ofPolygons([outline]);
    const lower = section.extrude(half, levels - 1, twist);
    const upper = lower.mirror([0, 0, 1]).translate([0, 0, 2 * half]);
    let body = kernel.Manifold.union([lower, upper]);
    const reach = bevelSize + 1;
    // Cones that take the tips off an external gear, or widen the hole that a ring's teeth leave.
    const cone = (turn) => {
      const widened = internal
        ? kernel.Manifold.cylinder(reach, tipRadius + bevelSize, tipRadius + bevelSize - reach, 128)
        : kernel.Manifold.cylinder(reach, tipRadius - bevelSize, tipRadius - bevelSize + reach, 128);
      return turn ? widened.mirror([0, 0, 1]).translate([0, 0, 2 * half]) : widened;
    };
    if (internal) {
      const blank = kernel.Manifold.cylinder(2 * half, rim, rim, 256);
      body = blank.subtract(body).subtract(cone(false)).subtract(cone(true));
    } else {
      const middle = kernel.Manifold.cylinder(
        2 * half - 2 * reach,
        tipRadius + 1,
        tipRadius + 1,
        128,
      ).translate([0, 0, reach]);
      body = body.intersect(kernel.Manifold.union([cone(false), middle, cone(true)]));
      if (bore) body = body.subtract(kernel.Manifold.cylinder(2 * half, bore, bore, 64));
    }
    for (const [angle, x, y] of places)
      parts.push(
        body
          .rotate([0, 0, (angle * 180) / Math.PI])
          .translate([x, y, 0])
          .getMesh(),
      );
  }
  return parts;
}

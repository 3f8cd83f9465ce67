import { type Gear, gearSizes } from './gear.js';
import { rollAt } from './rollAt.js';

/**
 * The rounded tip of the basic rack that generates an external gear's root, in the transverse plane.
 * u runs along the pitch line from the middle of the rack tooth, v radially outward from the reference circle.
 */
export interface RackRoot {
  /** Reference radius of the gear being generated, mm. */
  referenceRadius: number;
  /** Place of the rounding's centre in the normal plane: along the pitch line, and outward, mm. */
  centreAlong: number;
  centreOut: number;
  /** Rounding radius in the normal plane, mm. */
  radius: number;
  cosHelix: number;
  /** Rounding parameter where it runs into the straight flank: π/2 − α_n, radians (0 is the rack's tip line). */
  end: number;
  /** Roll angle of the involute at which the straight flank ends; negative when the root is undercut. */
  flankEndRoll: number;
  /** Radius of the root circle, mm. */
  rootRadius: number;
}

/** Least half width of the flat that is kept on the rack's tip, in modules: the root land never vanishes. */
const LEAST_TIP_FLAT = 0.002;

/**
 * The rack tip that generates `gear` with its flanks relieved and its root at `rootRadius`.
 * @param relief normal distance that each flank is set back, mm ≥ 0 (the rack's flanks move out by it)
 * @param activeRadius where mates need the involute to begin, mm [no need]
 * @param straight depth below the reference circle down to which the rack's flanks stay straight, mm [no need]
 * The rounding is kept at the rack's radius, or made as large as the rack tooth's width and the active flank leave
 * room for.
 * Source: ISO 53 for the rack; a gear is the envelope of its rack rolling on the reference circle (ISO 21771).
 */
export function rackRoot(
  gear: Gear,
  relief: number,
  rootRadius: number,
  activeRadius = Number.POSITIVE_INFINITY,
  straight = Number.NEGATIVE_INFINITY,
): RackRoot {
  const { normalPressureAngle: alpha, referenceRadius, ...sizes } = gearSizes(gear);
  const shift = gear.profileShift * gear.module;
  const depth = referenceRadius + shift - rootRadius;
  const halfWidth = (Math.PI * gear.module) / 4 + relief / Math.cos(alpha);
  const flatAt = (radius: number) =>
    halfWidth - (depth - radius) * Math.tan(alpha) - radius / Math.cos(alpha);
  const flat = LEAST_TIP_FLAT * gear.module;
  const sharp = flatAt(0);
  const widest = (sharp - flat) / (1 / Math.cos(alpha) - Math.tan(alpha));
  const transverse = sizes.transversePressureAngle;
  // The straight flank must reach as deep as the point of the rack that generates the active radius.
  const activeDepth =
    (referenceRadius * Math.sin(transverse) - sizes.baseRadius * rollAt(sizes.baseRadius, activeRadius)) *
    Math.sin(transverse);
  const deepest = (depth - shift - Math.max(activeDepth, straight)) / (1 - Math.sin(alpha));
  const radius = Math.max(0, Math.min(gear.rack.fillet * gear.module, widest, deepest));
  const straightDepth = depth - radius * (1 - Math.sin(alpha)) - shift;
  return {
    referenceRadius,
    centreAlong: flatAt(radius),
    centreOut: shift - (depth - radius),
    radius,
    cosHelix: Math.cos(sizes.helixAngle),
    end: Math.PI / 2 - alpha,
    flankEndRoll:
      (referenceRadius * Math.sin(transverse) - straightDepth / Math.sin(transverse)) / sizes.baseRadius,
    rootRadius,
  };
}

/**
 * Point of the generated root curve, in a frame whose +x axis is the middle of the tooth space.
 * @param t angle along the rack's rounding, radians, 0 (root circle) … `root.end` (flank)
 * The rack point touches the gear when its normal passes through the pitch point; the elliptical rounding of a
 * helical rack's transverse section is the normal-plane circle stretched by 1/cos β.
 */
export function pointOnTrochoid(root: RackRoot, t: number): [number, number] {
  const along = (root.centreAlong + root.radius * Math.sin(t)) / root.cosHelix;
  const out = root.centreOut - root.radius * Math.cos(t);
  const pitchPoint = along + out * Math.tan(t) * root.cosHelix;
  const turn = pitchPoint / root.referenceRadius;
  const x = root.referenceRadius + out;
  const y = along - pitchPoint;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return [x * cos - y * sin, x * sin + y * cos];
}

/**
 * How far a point is from the curve's tangent where the curve's parameter is `t`, and from the point there, mm.
 * The normal is the line from the pitch point to the point of contact, which in the rack's frame leans by
 * tan t · cos β from the radial direction.
 * @param x, y in the frame of `pointOnTrochoid`
 * @param toPoint true for the distance from the point
 */
export function distanceFromTrochoid(
  root: RackRoot,
  t: number,
  x: number,
  y: number,
  toPoint: boolean,
): number {
  const slope = Math.tan(t) * root.cosHelix;
  const along = (root.centreAlong + root.radius * Math.sin(t)) / root.cosHelix;
  const out = root.centreOut - root.radius * Math.cos(t);
  const turn = (along + out * slope) / root.referenceRadius;
  const u = root.referenceRadius + out;
  const v = -out * slope;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const dx = x - (u * cos - v * sin);
  const dy = y - (u * sin + v * cos);
  if (toPoint) return Math.sqrt(dx * dx + dy * dy);
  const scale = 1 / Math.sqrt(1 + slope * slope);
  return Math.abs(dx * ((cos + slope * sin) * scale) + dy * ((sin - slope * cos) * scale));
}

import { type Gear, gearSizes } from './gear.js';
import { involute } from './involute.js';

/**
 * Half the angle of a tooth (of a tooth space, for a ring) on the circle of `radius`, transverse section.
 * @param radius mm, at least the base radius; below it the base radius is taken, where the involute ends
 * @param relief normal distance in mm that each flank is cut back into its tooth [0]
 * @returns radians; negative beyond the circle where the two flanks of a tooth meet
 * Source: ISO 21771, tooth thickness half angle ψ_y = ψ + inv α_t − inv α_yt; a relief q measured along the
 * surface normal turns the transverse involute by q / (r_b cos β_b). The space of a ring is the external tooth
 * of the same numbers, so a relief widens it.
 */
export function halfThicknessAngle(gear: Gear, radius: number, relief = 0): number {
  const sizes = gearSizes(gear);
  const pressureAngle = Math.acos(Math.min(1, sizes.baseRadius / radius));
  const turn = relief / (sizes.baseRadius * Math.cos(sizes.baseHelixAngle));
  const nominal =
    sizes.halfThicknessAngle + involute(sizes.transversePressureAngle) - involute(pressureAngle);
  return gear.internal ? nominal + turn : nominal - turn;
}

/**
 * Transverse tooth thickness (external gear or ring alike) as an arc on the circle of `radius`.
 * @param radius mm, at least the base radius
 * @param relief normal distance in mm that each flank is cut back [0]
 * @returns mm; negative when the flanks have crossed
 * Source: ISO 21771, s_yt = d_y ψ_y; for a ring the tooth is the pitch less the space.
 */
export function transverseThickness(gear: Gear, radius: number, relief = 0): number {
  const angle = 2 * halfThicknessAngle(gear, radius, relief);
  return radius * (gear.internal ? (2 * Math.PI) / gear.teeth - angle : angle);
}

/**
 * Transverse tooth thickness on the tip circle.
 * @param tipRadius mm [the tip radius without any shortening]
 * @param relief normal distance in mm that each flank is cut back [0]
 * @returns mm; zero or less means a pointed tooth
 */
export function tipThickness(gear: Gear, tipRadius = gearSizes(gear).tipRadius, relief = 0): number {
  return transverseThickness(gear, tipRadius, relief);
}

/** What a tooth calliper is set to and reads, mm. */
export interface ChordalThickness {
  /** Normal tooth thickness as an arc on the reference circle. */
  thickness: number;
  /** Chord across that arc. */
  chord: number;
  /** Height from the chord to the tip circle. */
  addendum: number;
}

/**
 * Chordal tooth thickness of an external gear in the normal section.
 * @param tipHeight height of the tooth above the reference circle, mm [(h_a* + x) m_n]
 * @returns mm
 * Source: handbook formulas for the gear-tooth calliper: the normal section is taken as a spur gear of
 * z / cos³ β teeth, θ = s / (z_v m_n), chord z_v m_n sin θ.
 */
export function chordalThickness(
  gear: Gear,
  tipHeight = (gear.rack.addendum + gear.profileShift) * gear.module,
): ChordalThickness {
  const { normalPressureAngle, helixAngle } = gearSizes(gear);
  const thickness = (Math.PI / 2 + 2 * gear.profileShift * Math.tan(normalPressureAngle)) * gear.module;
  const virtualDiameter = (gear.teeth / Math.cos(helixAngle) ** 3) * gear.module;
  const halfAngle = thickness / virtualDiameter;
  return {
    thickness,
    chord: virtualDiameter * Math.sin(halfAngle),
    addendum: (virtualDiameter / 2) * (1 - Math.cos(halfAngle)) + tipHeight,
  };
}

import type { Rack } from './racks.js';

/** What defines one gear's teeth before any relief. Lengths in mm, angles in degrees. */
export interface Gear {
  /** Number of teeth, positive for internal gears too. */
  teeth: number;
  /** Normal module m_n, mm. */
  module: number;
  /** Normal pressure angle α_n, degrees. */
  pressureAngle: number;
  /** Helix angle β at the reference cylinder, degrees, 0 … 45, without sign. */
  helixAngle: number;
  /** Basic rack in units of m_n. */
  rack: Rack;
  /** Profile shift coefficient x in units of m_n; positive moves internal teeth outward. */
  profileShift: number;
  /** True for a ring, whose teeth point inward. */
  internal: boolean;
}

/** Transverse quantities that follow from a `Gear`. Lengths in mm, angles in radians. */
export interface GearSizes {
  /** Normal pressure angle α_n. */
  normalPressureAngle: number;
  /** Helix angle β. */
  helixAngle: number;
  /** Transverse module m_t = m_n / cos β. */
  transverseModule: number;
  /** Transverse pressure angle α_t, tan α_t = tan α_n / cos β. */
  transversePressureAngle: number;
  /** Base helix angle β_b, sin β_b = sin β cos α_n. */
  baseHelixAngle: number;
  /** Reference radius r = z m_t / 2. */
  referenceRadius: number;
  /** Base radius r_b = r cos α_t. */
  baseRadius: number;
  /** Tip radius without any shortening. */
  tipRadius: number;
  /** Root radius without any deepening. */
  rootRadius: number;
  /** Half the angle of a tooth (of a tooth space, for a ring) at the reference circle: (π/2 + 2 x tan α_n)/z. */
  halfThicknessAngle: number;
}

/**
 * Transverse sizes of a gear.
 * Source: ISO 21771; internal gears with positive tooth counts and a positive shift outward.
 */
export function gearSizes(gear: Gear): GearSizes {
  const normalPressureAngle = radians(gear.pressureAngle);
  const helixAngle = radians(gear.helixAngle);
  const transverseModule = gear.module / Math.cos(helixAngle);
  const transversePressureAngle = Math.atan(Math.tan(normalPressureAngle) / Math.cos(helixAngle));
  const referenceRadius = (gear.teeth * transverseModule) / 2;
  const outward = gear.internal ? -1 : 1;
  const shift = gear.profileShift * gear.module;
  return {
    normalPressureAngle,
    helixAngle,
    transverseModule,
    transversePressureAngle,
    baseHelixAngle: Math.asin(Math.sin(helixAngle) * Math.cos(normalPressureAngle)),
    referenceRadius,
    baseRadius: referenceRadius * Math.cos(transversePressureAngle),
    tipRadius: referenceRadius + shift + outward * gear.rack.addendum * gear.module,
    rootRadius: referenceRadius + shift - outward * gear.rack.dedendum * gear.module,
    halfThicknessAngle: (Math.PI / 2 + 2 * gear.profileShift * Math.tan(normalPressureAngle)) / gear.teeth,
  };
}

/** Degrees to radians. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Radians to degrees. */
export function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

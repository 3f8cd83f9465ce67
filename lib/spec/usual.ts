/**
 * Defaults of a parameter file that others than the schema have too: plan, solved shifts, advice and help. The schema
 * and `complete` take them from here; where each is from stands in the schema. Lengths in mm, angles in degrees.
 */
export const usual = {
  pressureAngle: 20,
  rack: 'B',
  helixForm: 'herringbone',
  /** By the form of the helix. */
  helixAngle: { herringbone: 30, helical: 20, spur: 0 },
  gap: 0.25,
  gapShare: 0.5,
  contactRatio: 1.2,
  pinchForce: 50,
  sunTorque: 0.5,
  poisson: 0.36,
  firstLayerGrowth: 0.15,
} as const;

/** Width of an extruded line in nozzle diameters. Common practice. */
export const LINE_PER_NOZZLE = 1.125;

/** Rim and tooth depth go together by this factor, and no rim is thinner than this, mm. Common practice. */
const RIM_PER_DEPTH = 1.2;
const LEAST_RIM = 3;

/** Teeth, as far as walls around them go by their size. */
export interface ToothDepth {
  /** Of the basic rack, in modules. */
  rack: { addendum: number; dedendum: number };
  /** mm. */
  module: number;
}

/** A wall that does not flex under its teeth, mm. */
export function sturdyWall({ rack, module }: ToothDepth): number {
  return RIM_PER_DEPTH * (rack.addendum + rack.dedendum) * module;
}

/** What rims and backings are where none is given, mm. */
export function usualWall(teeth: ToothDepth): number {
  return Math.max(LEAST_RIM, sturdyWall(teeth));
}

/** `usualWall` in a few words. */
export const USUAL_RIM = `the greater of ${LEAST_RIM} mm and ${RIM_PER_DEPTH} tooth depths`;
/** The same by the parameters. */
export const USUAL_WALL = `the greater of ${LEAST_RIM} and ${RIM_PER_DEPTH} × (rack.addendum + rack.dedendum) × module`;
/** `sturdyWall` in words. */
export const STURDY_WALL = `${RIM_PER_DEPTH} × (rack.addendum + rack.dedendum) × module`;

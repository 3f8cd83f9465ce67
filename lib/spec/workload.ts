import { gearSizes } from '../tooth/gear.js';
import { barOf, gearsOf } from './kinds.js';
import type { CommonSpec, Spec } from './types.js';

/** Points across one tooth: a few that are always there, and more the finer the mesh is for its module. */
const POINTS_ALWAYS = 9;
const POINTS_PER_ROOT = 0.65;
/** Share of the tolerance that is left for the steps along the helix. */
const HELIX_SHARE = 0.4;
/** Levels that end faces and bevels count for. */
const END_LEVELS = 4;

/**
 * About how many triangles a set will have, before any of it is built: for every tooth, points across times levels
 * along the helix. A chord of the helix that turns by Δ on the radius r leaves it by r Δ²/8.
 * The constants are fitted to finished meshes; the figure is right within a factor of two, and rather too high for large
 * sets. What is built is counted again (`lib/proof/meshBudget.ts`).
 */
export function estimatedTriangles(spec: Spec): number {
  const gears = gearsOf(spec).reduce((sum, each) => sum + (each.count ?? 1) * gear(spec, each), 0);
  // The flanks of a bar are plane: only its root roundings are divided.
  return gears + 2 * (barOf(spec)?.teeth ?? 0) * pointsOf(spec) * END_LEVELS;
}

function pointsOf({ module, tolerance }: CommonSpec): number {
  return POINTS_ALWAYS + POINTS_PER_ROOT * Math.sqrt(module / chordTolerance(module, tolerance));
}

/** However coarse the tolerance, chords stay this share of the module from the surface: coarser teeth cut into themselves. */
const COARSEST_CHORD = 0.025;

/** How far chords of teeth may be from their surface, mm. */
export function chordTolerance(module: number, tolerance: number): number {
  return Math.min(tolerance, COARSEST_CHORD * module);
}

function gear(
  spec: CommonSpec,
  { teeth, profileShift = 0 }: { teeth: number; profileShift?: number },
): number {
  const { module, pressureAngle, rack, helix, faceWidth, tolerance } = spec;
  const { referenceRadius, helixAngle } = gearSizes({
    teeth,
    module,
    pressureAngle,
    helixAngle: helix.angle,
    rack,
    profileShift,
    // The reference circle is the same inside and outside.
    internal: false,
  });
  const levels =
    (faceWidth * Math.tan(helixAngle)) /
    Math.sqrt(8 * HELIX_SHARE * chordTolerance(module, tolerance) * referenceRadius);
  return 2 * teeth * pointsOf(spec) * (levels + END_LEVELS);
}

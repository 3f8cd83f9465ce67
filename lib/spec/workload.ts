import { gearSizes } from '../tooth/gear.js';
import type { PlanetarySpec } from './types.js';

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
 * The constants are fitted to finished meshes; the figure is right within a factor of two.
 */
export function estimatedTriangles(spec: PlanetarySpec): number {
  return gear(spec, 'sun') + spec.planets.count * gear(spec, 'planets') + gear(spec, 'ring');
}

function gear(spec: PlanetarySpec, part: 'sun' | 'planets' | 'ring'): number {
  const { module, pressureAngle, rack, helix, faceWidth, tolerance } = spec;
  const { teeth, profileShift = 0 } = spec[part];
  const { referenceRadius, helixAngle } = gearSizes({
    teeth,
    module,
    pressureAngle,
    helixAngle: helix.angle,
    rack,
    profileShift,
    internal: part === 'ring',
  });
  const points = POINTS_ALWAYS + POINTS_PER_ROOT * Math.sqrt(module / tolerance);
  const levels =
    (faceWidth * Math.tan(helixAngle)) / Math.sqrt(8 * HELIX_SHARE * tolerance * referenceRadius);
  return 2 * teeth * points * (levels + END_LEVELS);
}

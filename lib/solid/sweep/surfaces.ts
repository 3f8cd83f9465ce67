import type { ToothProfile } from '../../tooth/profile.js';
import { bevelSurface, type SurfaceDistance, sweptSurface } from './exactSurface.js';
import type { Sweep } from './helix.js';

/** Every exact surface of the toothed side of a gear body: the six of its outline, then the bevel's cone. */
export function toothedSurfaces(profile: ToothProfile, sweep: Sweep): SurfaceDistance[] {
  const swept = profile.segments.map((segment) => sweptSurface(profile, segment));
  return sweep.bevelSize > 0 ? [...swept, bevelSurface(profile, sweep)] : swept;
}

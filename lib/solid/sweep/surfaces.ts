import type { ToothProfile } from '../../tooth/profile.js';
import { bevelSurface, type ExactSurface, lipSurface, sweptSurface } from './exactSurface.js';
import type { Sweep } from './helix.js';

/** Every exact surface of the toothed side of a gear body: the six of its outline, then the cones of bevel and lip. */
export function toothedSurfaces(profile: ToothProfile, sweep: Sweep): ExactSurface[] {
  const swept = profile.segments.map((segment) => sweptSurface(profile, segment));
  if (sweep.bevelSize > 0) swept.push(bevelSurface(profile, sweep));
  if (sweep.lips) swept.push(lipSurface(profile, sweep));
  return swept;
}

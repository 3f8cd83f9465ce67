import { inverseInvolute, involute } from '../../tooth/involute.js';
import type { Frame } from './frame.js';

/** What both meshes ask for at one common centre distance. Lengths in normal modules, angles in radians. */
export interface Distance {
  centreDistance: number;
  inner: MeshAt;
  outer: MeshAt;
  /** How much the tips of sun and planets are shortened to keep the rack's bottom clearance. */
  shortening: number;
}

/** One mesh at that distance. */
export interface MeshAt {
  workingAngle: number;
  involuteWorking: number;
  /** Length of the line of action between the base circles, a sin α_wt. */
  line: number;
  /** x_sun + x_planet, or x_ring − x_planet. */
  shifts: number;
}

/**
 * The shift sums that a centre distance asks for in both meshes, and the tip shortening that follows.
 * Source: ISO 21771, as `shiftSum` of `pair.ts`; shortening by the difference between shift sum and
 * centre distance modification.
 */
export function distanceAt(frame: Frame, centreDistance: number): Distance {
  const { sun, planet, ring, base, unshifted } = frame;
  const inner = meshAt(frame, centreDistance, base.inner, sun.teeth + planet.teeth);
  const outer = meshAt(frame, centreDistance, base.outer, ring.teeth - planet.teeth);
  const shortening = Math.max(0, inner.shifts - (centreDistance - unshifted.inner));
  return { centreDistance, inner, outer, shortening };
}

/** The centre distance of a mesh with a given shift sum; NaN where the base circles would pass each other. */
export function distanceFor(frame: Frame, mesh: 'inner' | 'outer', shifts: number): number {
  const { sun, planet, ring } = frame;
  const teeth = mesh === 'inner' ? sun.teeth + planet.teeth : ring.teeth - planet.teeth;
  const value = frame.involuteTransverse + (2 * frame.tanNormal * shifts) / teeth;
  return value > 0 ? frame.base[mesh] / Math.cos(inverseInvolute(value)) : Number.NaN;
}

function meshAt(frame: Frame, centreDistance: number, base: number, teeth: number): MeshAt {
  const workingAngle = Math.acos(Math.min(1, base / centreDistance));
  const involuteWorking = involute(workingAngle);
  return {
    workingAngle,
    involuteWorking,
    line: centreDistance * Math.sin(workingAngle),
    shifts: (teeth * (involuteWorking - frame.involuteTransverse)) / (2 * frame.tanNormal),
  };
}

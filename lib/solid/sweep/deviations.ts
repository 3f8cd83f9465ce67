import type { ToothProfile } from '../../tooth/profile.js';
import { distanceFrom } from './exactSurface.js';
import { angleBefore, type Sweep, untwisting } from './helix.js';
import type { PitchMesh } from './pitchMesh.js';
import type { Patch } from './pitchVertices.js';
import { arePlacedAlike, readCorners } from './places.js';
import { DENSE, type Points } from './samples.js';
import type { Allowance } from './steps.js';

/** A pitch with the largest distance of each of its patches from its exact surface, mm. */
export interface Measured {
  mesh: PitchMesh;
  /** One for each patch. */
  each: number[];
  /** The largest of each kind. */
  worst: Allowance;
}

/**
 * Measures every patch of a pitch, sampled on every triangle that is not a copy of one moved along the helix.
 * @param before another division of the same pitch, measured in the same points: what it has in common is not measured again
 */
export function deviations(
  mesh: PitchMesh,
  profile: ToothProfile,
  sweep: Sweep,
  points = DENSE,
  before?: Measured,
): Measured {
  const worst: Allowance = { flank: 0, land: 0, root: 0 };
  const each = mesh.patches.map((patch, i) => {
    const old = before?.mesh.patches[i];
    const value =
      old && isSame(mesh, patch, before.mesh, old)
        ? before.each[i]
        : deviation(mesh, patch, profile, sweep, points);
    worst[patch.kind] = Math.max(worst[patch.kind], value);
    return value;
  });
  return { mesh, each, worst };
}

function deviation(
  mesh: PitchMesh,
  patch: Patch,
  profile: ToothProfile,
  sweep: Sweep,
  { shares, onLastEdge }: Points,
): number {
  const { surface, from, alike, kind } = patch;
  const back = untwisting(profile, sweep);
  const { faceWidth } = sweep;
  const corners = new Float64Array(9);
  const point = new Float64Array(3);
  let worst = patch.folded;
  for (let t = from; t < from + alike; t++) {
    readCorners(mesh, mesh.triangles, 3 * t, corners);
    const first = t > from && sharesLastEdge(mesh.triangles, 3 * t) ? 3 * onLastEdge : 0;
    for (let i = first; i < shares.length; i += 3) {
      const u = shares[i];
      const v = shares[i + 1];
      const w = shares[i + 2];
      const x = u * corners[0] + v * corners[3] + w * corners[6];
      const y = u * corners[1] + v * corners[4] + w * corners[7];
      const z = u * corners[2] + v * corners[5] + w * corners[8];
      point[0] = Math.sqrt(x * x + y * y);
      // Lands and cones are surfaces of revolution: the angle says nothing there.
      if (kind !== 'land') point[1] = angleBefore(back, x, y, z);
      point[2] = Math.min(z, faceWidth - z);
      const off = distanceFrom(surface, point);
      if (off > worst) worst = off;
    }
  }
  return worst;
}

/** Whether the triangle before has the edge between this one's first and last corner, as in a zipped strip. */
function sharesLastEdge(triangles: readonly number[], at: number): boolean {
  const has = (id: number) =>
    triangles[at - 3] === id || triangles[at - 2] === id || triangles[at - 1] === id;
  return has(triangles[at]) && has(triangles[at + 2]);
}

/** Whether two patches are measured on the same triangles, in the same places. */
function isSame(mesh: PitchMesh, patch: Patch, other: PitchMesh, old: Patch): boolean {
  if (patch.kind !== old.kind || patch.alike !== old.alike || patch.folded !== old.folded) return false;
  for (let i = 0; i < 3 * patch.alike; i++) {
    const a = mesh.triangles[3 * patch.from + i];
    const b = other.triangles[3 * old.from + i];
    if (!arePlacedAlike(mesh, a, other, b)) return false;
  }
  return true;
}

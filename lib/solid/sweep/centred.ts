import type { ToothProfile } from '../../tooth/profile.js';
import { deviations, type Measured } from './deviations.js';
import type { Sweep } from './helix.js';
import { type PitchMesh, pitchMesh } from './pitchMesh.js';
import { DENSE, FEW } from './samples.js';
import { standingBack } from './standingBack.js';
import type { Allowance, Steps } from './steps.js';

/** A pitch's distance from the exact surface, with the steps it was divided by. */
export interface Division {
  steps: Steps;
  measured: Measured;
}

/**
 * Vertices stand back by this share of how far facets would stand out. At a half facets would reach as far to either side,
 * but a gap is the least distance there is and sees what stands out alone: measured gaps scatter around the one asked at
 * three quarters (mean of 38 sets, in tolerances: -0.34 at none, -0.12 at a half, -0.03), and no facet is farther off.
 */
export const BACK = 0.75;

/**
 * The same division with the concave sides of the teeth standing back (`standingBack`), so that its facets lie on both sides
 * of the exact surface; as it was where that brings nothing.
 * @param allowed largest distance of each kind of patch, mm
 */
export function centred(
  { steps, measured: exact }: Division,
  profile: ToothProfile,
  sweep: Sweep,
  allowed: Allowance,
): PitchMesh {
  const out = concaveWorst(exact, profile);
  const meshAt = (back: number) => pitchMesh(profile, sweep, steps, standingBack(profile, back));
  // Chords across a side stand out; those along the helix of an external root, which is a saddle, cut in.
  let back = BACK * out;
  if (sweep.form !== 'spur' && !profile.gear.internal) {
    const cutIn = concaveWorst(deviations(meshAt(back), profile, sweep, FEW), profile) - back;
    back = BACK * (out - Math.max(0, cutIn));
  }
  if (!(back > 0)) return exact.mesh;
  const moved = deviations(meshAt(back), profile, sweep, DENSE, exact);
  const { flank, land, root } = moved.worst;
  const isWithin = flank <= allowed.flank && land <= allowed.land && root <= allowed.root;
  const isNoFarther = farthest(moved) <= LANDS * farthest(exact) && concaveWorst(moved, profile) < out;
  return isWithin && isNoFarther ? moved.mesh : exact.mesh;
}

/** Lands grow along themselves by what stands back, and the sagitta of their chords by so much. */
const LANDS = 1.01;

function farthest({ worst: { flank, land, root } }: Measured): number {
  return Math.max(flank, land, root);
}

/** The largest distance of the sides that chords leave towards the mate, mm: flanks of a ring, root curves of other gears. */
function concaveWorst({ mesh, each }: Measured, { gear }: ToothProfile): number {
  return mesh.patches.reduce((worst, { kind, surface }, i) => {
    const isConcave = gear.internal ? kind === 'flank' : surface.kind === 'trochoid';
    return isConcave ? Math.max(worst, each[i]) : worst;
  }, 0);
}

import type { ToothProfile } from '../../tooth/profile.js';
import { deviations, type Measured } from './deviations.js';
import type { Sweep } from './helix.js';
import { type PitchMesh, pitchMesh } from './pitchMesh.js';
import { DENSE, FEW } from './samples.js';
import { type Allowance, stepsFor } from './steps.js';

/** A flank may spend half the tolerance, so that two mating flanks together stay within it. */
const FLANK_SHARE = 0.5;
const MOST_ROUNDS = 24;
/** Rounds spent on shedding triangles once a division is within tolerance. */
const THRIFTY_ROUNDS = 6;
const KINDS = ['flank', 'land', 'root'] as const;

/**
 * The pitch of a gear divided until its measured distance from the exact surface is within tolerance: half of it
 * on flanks. Each round sets the steps of every kind of patch from what the last one measured, coarser or finer,
 * and the division with the fewest triangles that is within tolerance is kept.
 * @param tolerance mm
 * @throws Error when it does not come within tolerance, which no tested input does
 */
export function adaptivePitch(profile: ToothProfile, sweep: Sweep, tolerance: number): PitchMesh {
  const allowed: Allowance = { flank: tolerance * FLANK_SHARE, land: tolerance, root: tolerance };
  const spent: Allowance = { ...allowed };
  // What once was too coarse is never tried again, so that the rounds cannot run in a circle.
  const ceiling: Allowance = { flank: Infinity, land: Infinity, root: Infinity };
  let best: PitchMesh | null = null;
  let looked: Measured | undefined;
  for (let round = 0; round < MOST_ROUNDS && !(best && round >= THRIFTY_ROUNDS); round++) {
    const stuck = !best && round >= THRIFTY_ROUNDS;
    if (stuck && round === THRIFTY_ROUNDS) {
      // Finer tips did not help the flanks, so they begin anew, with finer feet.
      spent.flank = allowed.flank;
      ceiling.flank = Infinity;
    }
    const mesh = pitchMesh(profile, sweep, stepsFor(profile, spent, stuck));
    const better = !best || mesh.triangles.length < best.triangles.length;
    looked = deviations(mesh, profile, sweep, FEW, looked);
    let measured = looked.worst;
    const isWithin = () => KINDS.every((kind) => measured[kind] <= allowed[kind]);
    if (better && isWithin()) {
      measured = deviations(mesh, profile, sweep, DENSE).worst;
      if (isWithin()) best = mesh;
    }
    for (const kind of KINDS) {
      const aim = (0.9 * allowed[kind]) / Math.max(measured[kind], 1e-12);
      spent[kind] = Math.min(ceiling[kind], spent[kind] * Math.min(1.6, Math.max(0.3, aim)));
      if (measured[kind] > allowed[kind]) ceiling[kind] = spent[kind];
    }
  }
  if (!best) throw new Error('the toothed surface does not come within tolerance');
  return best;
}

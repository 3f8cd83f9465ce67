import { refuse } from '../../refusal.js';
import type { ToothProfile } from '../../tooth/profile.js';
import { centred, type Division } from './centred.js';
import { deviations, type Measured } from './deviations.js';
import { type Sweep, twistRate } from './helix.js';
import { type PitchMesh, pitchMesh } from './pitchMesh.js';
import type { Patch } from './pitchVertices.js';
import { DENSE, FEW } from './samples.js';
import { type Allowance, type Steps, stepsFor } from './steps.js';

/** A flank may spend half the tolerance, so that two mating flanks together stay within it. */
const FLANK_SHARE = 0.5;
const MOST_ROUNDS = 24;
/** Rounds spent on shedding triangles once a division is within tolerance. */
const THRIFTY_ROUNDS = 6;
/** Triangles of one gear beyond which no finer division is tried: several times what a whole set is accepted with. */
const MOST_OF_GEAR = 5_000_000;
/** Steps for this share of what is allowed are fine enough to tell that a surface comes no nearer by them. */
const HOPELESS = 0.01;
/** Whatever the reason: too many teeth or levels for so fine a mesh, or surfaces that no division comes near. */
const NOT_KEPT = `is not kept by these teeth with ${MOST_OF_GEAR / 1e6} million triangles a gear`;
const KINDS = ['flank', 'land', 'root'] as const;

/**
 * The pitch of a gear divided until its measured distance from the exact surface is within tolerance: half of it
 * on flanks. Each round sets the steps of every kind of patch from what the last one measured, coarser or finer,
 * and the division with the fewest triangles that is within tolerance is kept.
 * Then its error is centred (`centred`).
 * Where a division would take more triangles than one gear may have, it is given up, and no finer one is tried.
 * @param tolerance mm
 * @throws Refusal of the tolerance where nothing within that budget keeps it
 */
export function adaptivePitch(profile: ToothProfile, sweep: Sweep, tolerance: number): PitchMesh {
  const allowed: Allowance = { flank: tolerance * FLANK_SHARE, land: tolerance, root: tolerance };
  const spent: Allowance = { ...allowed };
  // What once was too coarse is never tried again, so that the rounds cannot run in a circle.
  const ceiling: Allowance = { flank: Infinity, land: Infinity, root: Infinity };
  const most = MOST_OF_GEAR / profile.gear.teeth;
  // Steps a hundred times as fine have not even halved the distance.
  const isHopeless = (kind: Patch['kind'], now: Allowance, before: Allowance) =>
    spent[kind] < HOPELESS * allowed[kind] && now[kind] > allowed[kind] && now[kind] > before[kind] / 2;
  let best: Division | null = null;
  let looked: Measured | undefined;
  let first: Allowance | undefined;
  for (let round = 0; round < MOST_ROUNDS && !(best && round >= THRIFTY_ROUNDS); round++) {
    const stuck = !best && round >= THRIFTY_ROUNDS;
    if (stuck && round === THRIFTY_ROUNDS) {
      // Finer tips did not help the flanks, so they begin anew, with finer feet.
      spent.flank = allowed.flank;
      ceiling.flank = Infinity;
    }
    const steps = stepsFor(profile, { ...spent }, stuck);
    if (levelsIn(sweep, twistRate(profile, sweep), steps) > most) break;
    const mesh = pitchMesh(profile, sweep, steps);
    // No step is less than half of the one before, so what comes next is not many times as large.
    if (mesh.triangles.length > 3 * most) break;
    const better = !best || mesh.triangles.length < best.measured.mesh.triangles.length;
    looked = deviations(mesh, profile, sweep, FEW, looked);
    let measured = looked.worst;
    first ??= measured;
    if (!best && stuck && KINDS.some((kind) => isHopeless(kind, measured, first!))) break;
    const isWithin = () => KINDS.every((kind) => measured[kind] <= allowed[kind]);
    if (better && isWithin()) {
      const dense = deviations(mesh, profile, sweep, DENSE);
      measured = dense.worst;
      if (isWithin()) best = { steps, measured: dense };
    }
    // The same steps again would give the same division.
    if (!adjust(spent, ceiling, measured, allowed) && best) break;
  }
  return best
    ? centred(best, profile, sweep, allowed)
    : refuse('not-meshable', 'tolerance', tolerance, NOT_KEPT);
}

/**
 * Sets what is spent for the next round from what this one measured, in place.
 * @returns whether that is another division
 */
function adjust(spent: Allowance, ceiling: Allowance, measured: Allowance, allowed: Allowance): boolean {
  let changes = false;
  for (const kind of KINDS) {
    const before = spent[kind];
    const aim = (0.9 * allowed[kind]) / Math.max(measured[kind], 1e-12);
    spent[kind] = Math.min(ceiling[kind], before * Math.min(1.6, Math.max(0.3, aim)));
    if (measured[kind] > allowed[kind]) ceiling[kind] = spent[kind];
    changes ||= spent[kind] !== before;
  }
  return changes;
}

/** Levels along the helix that these steps ask for. */
function levelsIn({ faceWidth }: Sweep, rate: number, { rootTurn, tipTurn }: Steps): number {
  return (faceWidth * rate) / Math.min(rootTurn, tipTurn);
}

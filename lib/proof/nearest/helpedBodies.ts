import { unlessRefused } from '../../refusal.js';
import { buildSet } from '../../solid/buildSet.js';
import { floorThousandth } from '../../spec/nearest.js';
import type { TrainSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { bed } from '../checks/bed.js';
import { singly, tried, type Ways } from './changes.js';
import { helpedChecks } from './help.js';
import { smallerWays } from './smallerWays.js';
import { works } from './works.js';

/** Meshes of which only their box is wanted, mm. */
const COARSE = 0.05;
/** Shares of the tolerance that are tried. */
const FINER = [0.8, 0.6, 0.4, 0.2];

/**
 * Checks of finished bodies, of which the one that finds no room on the bed says what would: tried by building it. Where
 * meshes took up the rest of what their outlines leave of the gap, what leaves more of it is said.
 * Where their outlines are well, finer meshes are tried.
 * @param stops whether a check stops the job
 * @param isProved whether another file passes every check that stops a job; none where a script changes the bodies
 */
export function helpedBodies(
  spec: TrainSpec,
  checks: readonly Check[],
  stops: (check: Check) => boolean,
  isProved?: (other: TrainSpec) => boolean,
): Check[] {
  const noRoom = (check: Check) => check.id === 'bed' && stops(check);
  if (!checks.some(stops)) return [...checks];
  if (!checks.some(noRoom)) {
    if (!works(spec)) return helpedChecks(spec, checks, stops);
    return isProved
      ? helpedChecks(spec, checks, stops, { ways: finerWays(spec), more: isProved })
      : [...checks];
  }
  return helpedChecks(spec, checks, noRoom, { ways: smallerWays(spec), more: fits });
}

/** The tolerance, finer by the first share that works. */
function finerWays({ tolerance }: TrainSpec): Ways {
  const finer = FINER.map((share) => floorThousandth(share * tolerance));
  return singly([tried('tolerance', finer)]);
}

/** Finer meshes are larger by no more than the tolerance on each side. */
function fits(spec: TrainSpec): boolean {
  const { width, depth, height } = spec.printer.bed;
  const room = { width: width - 2 * COARSE, depth: depth - 2 * COARSE, height };
  const coarse = { ...spec, tolerance: COARSE, printer: { ...spec.printer, bed: room } };
  return unlessRefused(() => bed({ spec: coarse, parts: buildSet(coarse) }).holds, false);
}

import { buildTrain } from '../../solid/buildTrain.js';
import { Refusal } from '../../spec/refusal.js';
import type { TrainSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { bed } from '../checks/bed.js';
import { helpedChecks } from './help.js';
import { smallerWays } from './smallerWays.js';
import { works } from './works.js';

/** Meshes of which only their box is wanted, mm. */
const COARSE = 0.05;

/**
 * Checks of finished bodies, of which the one that finds no room on the bed says what would: tried by building it. Where
 * meshes took up the rest of what their outlines leave of the gap, what leaves more of it is said.
 * @param stops whether a check stops the job
 */
export function helpedBodies(
  spec: TrainSpec,
  checks: readonly Check[],
  stops: (check: Check) => boolean,
): Check[] {
  const noRoom = (check: Check) => check.id === 'bed' && stops(check);
  if (!checks.some(noRoom)) return works(spec) ? [...checks] : helpedChecks(spec, checks, stops);
  return helpedChecks(spec, checks, noRoom, { ways: smallerWays(spec), more: fits });
}

/** Finer meshes are larger by no more than the tolerance on each side. */
function fits(spec: TrainSpec): boolean {
  const { width, depth, height } = spec.printer.bed;
  const room = { width: width - 2 * COARSE, depth: depth - 2 * COARSE, height };
  const coarse = { ...spec, tolerance: COARSE, printer: { ...spec.printer, bed: room } };
  try {
    return bed({ spec: coarse, parts: buildTrain(coarse) }).holds;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

import { buildTrain } from '../../solid/buildTrain.js';
import { floorThousandth } from '../../spec/nearest.js';
import { Refusal } from '../../spec/refusal.js';
import type { TrainSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { bed } from '../checks/bed.js';
import { along, alongWhole, type Change, type Way, type Ways } from './changes.js';
import { helpedChecks } from './help.js';
import { works } from './works.js';

/** Meshes of which only their box is wanted, mm. */
const COARSE = 0.05;
/** Steps by which the module falls where nothing else finds room. */
const STEPS = 40;

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

function smallerWays(spec: TrainSpec): Ways {
  const { module, faceWidth, fit } = spec;
  const low = { faceWidth: floorThousandth(Math.min(faceWidth, 0.8 * spec.printer.bed.height)) };
  const loose = { 'fit.gap': Math.min(fit.gap, 0.05) };
  return {
    single: [along('module', module, 0.2), along('faceWidth', faceWidth, 1), ...sizesOf(spec)],
    counts: ({ module: most }) =>
      Array.from({ length: STEPS }, (_, i): Change => ({ module: floorThousandth(most * 0.9 ** (i + 1)) })),
    bases: [{}, low, { ...low, ...loose }],
  };
}

function sizesOf(spec: TrainSpec): Way[] {
  switch (spec.kind) {
    case 'pair':
      return [
        alongWhole('pinion.teeth', spec.pinion.teeth, 5),
        alongWhole('wheel.teeth', spec.wheel.teeth, 5),
        ...(spec.wheel.internal ? [along('wheel.rim', spec.wheel.rim, 0.4)] : []),
      ];
    case 'rack':
      return [
        along('bar.length', spec.bar.length, 1),
        alongWhole('bar.teeth', spec.bar.teeth, 1),
        alongWhole('pinion.teeth', spec.pinion.teeth, 5),
        along('bar.backing', spec.bar.backing, 0.4),
      ];
    case 'gear':
      return [
        alongWhole('gear.teeth', spec.gear.teeth, 5),
        ...(spec.gear.internal ? [along('gear.rim', spec.gear.rim, 0.4)] : []),
      ];
  }
}

import { drawnGap } from '../../fit/compensation.js';
import { drawnTrain } from '../../fit/train/drawnTrain.js';
import { fitDrawn, fitTrain } from '../../fit/train/fitTrain.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import { unlessRefused } from '../../refusal.js';
import { wallOf } from '../../solid/buildTrain.js';
import type { Spec } from '../../spec/types.js';
import { leastMeshGap } from '../allowedGapError.js';
import { mustFail } from '../check.js';
import { outlineChecks } from '../checks/outlines.js';
import { thinnestTip } from '../checks/tipThickness.js';
import { leastRolled } from '../rolling/rollingError.js';
import { rollTrain } from '../rolling/rollTrain.js';
import { type Change, changed } from './changes.js';
import { searchOf } from './searchOf.js';

/** Share of the tolerance that meshes may take of what rolling outlines leave of the gap. */
const FOR_MESHES = 0.75;

/**
 * Whether what a file asks for keeps every `must` that can be worked out from its numbers and outlines, cheapest first:
 * what the checks ask before anything is built. Some milliseconds.
 */
export function works(spec: Spec): boolean {
  return unlessRefused(() => runs(spec), false);
}

function runs(spec: Spec): boolean {
  const { assembles, triesRolling } = searchOf(spec);
  const numbers = trainNumbers(spec);
  if (!assembles(numbers) || !(thinnestTip(drawnTrain(numbers)).thickness > 0)) return false;
  const asked = fitTrain(numbers);
  const drawn = fitDrawn(asked);
  if (outlineChecks(asked).some(mustFail)) return false;
  // Letters are laid out to see whether they find room: a matter of some dozen milliseconds.
  if (drawn.gears.some(({ features }) => features.text))
    for (const one of drawn.gears) wallOf(drawn, one, drawn.spec.tolerance);
  if (!triesRolling) return true;
  const enough = Math.max(leastRolled(drawnGap(spec)), leastMeshGap(spec) + FOR_MESHES * spec.tolerance);
  return rollTrain(drawn, enough).every(({ least }) => least >= enough);
}

/**
 * Whether a file with values changed can be read, and works.
 * @param more what else it must keep [nothing]
 */
export function worksWith<S extends Spec>(spec: S, change: Change, more?: (other: S) => boolean): boolean {
  const other = changed(spec, change);
  return other !== undefined && works(other) && (!more || more(other));
}

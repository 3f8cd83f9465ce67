import { drawnGap } from '../../fit/compensation.js';
import { drawnTrain } from '../../fit/trains/drawnTrain.js';
import { fitDrawn, fitTrain } from '../../fit/trains/fitTrain.js';
import { trainNumbers } from '../../fit/trains/trainNumbers.js';
import { trainWalls } from '../../solid/buildTrain.js';
import type { TrainSpec } from '../../spec/types.js';
import { leastMeshGap } from '../allowedGapError.js';
import { mustFail } from '../check.js';
import { leastRolled } from '../rolling/rollingError.js';
import { rollTrain } from '../trains/rollTrain.js';
import { thinnestTip } from '../trains/trainChecks.js';
import { outlineChecks } from '../trains/trainToothChecks.js';

/** Share of the tolerance that meshes may take of what rolling outlines leave of the gap. */
const FOR_MESHES = 0.75;

/**
 * `works` for a pair, a rack and pinion or one gear. Teeth that foul each other near their tips show only when they
 * roll, which takes some dozen milliseconds where they do not.
 * @throws Refusal where teeth cannot be drawn, or letters find no room
 */
export function trainWorks(spec: TrainSpec): boolean {
  const numbers = trainNumbers(spec);
  if (!(thinnestTip(drawnTrain(numbers)).thickness > 0)) return false;
  const asked = fitTrain(numbers);
  const drawn = fitDrawn(asked);
  if (outlineChecks(asked).some(mustFail)) return false;
  if (drawn.gears.some(({ features }) => features.text)) trainWalls(drawn);
  const enough = Math.max(leastRolled(drawnGap(spec)), leastMeshGap(spec) + FOR_MESHES * spec.tolerance);
  const rolled = rollTrain(drawn, enough);
  return !rolled || rolled.least >= enough;
}

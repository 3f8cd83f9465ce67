import { drawnTrain } from '../../fit/trains/drawnTrain.js';
import { fitDrawn, fitTrain } from '../../fit/trains/fitTrain.js';
import { trainNumbers } from '../../fit/trains/trainNumbers.js';
import type { TrainSpec } from '../../spec/types.js';
import { thinnestTip } from '../trains/trainChecks.js';
import { outlineChecks } from '../trains/trainToothChecks.js';

/**
 * `works` for a pair, a rack and pinion or one gear.
 * @throws Refusal where teeth cannot be drawn
 */
export function trainWorks(spec: TrainSpec): boolean {
  const numbers = trainNumbers(spec);
  if (!(thinnestTip(drawnTrain(numbers)).thickness > 0)) return false;
  const asked = fitTrain(numbers);
  fitDrawn(asked);
  return outlineChecks(asked).every(({ holds, level }) => holds || level !== 'must');
}

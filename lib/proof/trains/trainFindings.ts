import type { Adjustment } from '../../fit/adjustment.js';
import type { FittedTrain } from '../../fit/trains/fitTrain.js';
import type { Train } from '../../fit/trains/train.js';
import type { Part } from '../../solid/mesh.js';
import type { BodyFindings } from '../bodies.js';
import type { MotionFindings } from '../freeToTurn/freeToTurn.js';
import type { SmallPart } from '../safety/smallParts.js';
import type { TrainRolling } from './rollTrain.js';
import type { TrainPlay } from './trainPlay.js';

/** What is known of a train, stage by stage. */
export interface TrainFindings {
  /** As asked, and as drawn. */
  numbers: Train;
  drawnNumbers: Train;
  asked?: FittedTrain;
  drawn?: FittedTrain;
  /** Every change against what the file asks for [none]. */
  adjustments?: readonly Adjustment[];
  rolling?: TrainRolling | null;
  parts?: readonly Part[];
  bodies?: BodyFindings;
  motion?: MotionFindings;
  play?: TrainPlay | null;
  smallParts?: SmallPart[];
}

/** What is known once the teeth are drawn and have been rolled. */
export type TrainTeeth = TrainFindings & Required<Pick<TrainFindings, 'asked' | 'drawn' | 'rolling'>>;

/** What is known once the bodies are built and measured. */
export type TrainBodies = TrainTeeth & Required<TrainFindings>;

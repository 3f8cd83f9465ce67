import type { Adjustment } from '../fit/adjustment.js';
import type { FittedTrain } from '../fit/train/fitTrain.js';
import type { Train } from '../fit/train/train.js';
import type { Part } from '../solid/mesh.js';
import type { CommonSpec, Spec } from '../spec/types.js';
import type { BodyFindings } from './bodies.js';
import type { MotionFindings } from './freeToTurn/freeToTurn.js';
import type { PlayRecord } from './motion/playRecord.js';
import type { TrainPlay } from './motion/trainPlay.js';
import type { RollingGap } from './rolling/rollTrain.js';
import type { FingerGap } from './safety/fingerGaps.js';
import type { SmallPart } from './safety/smallParts.js';

/** What is known of a train before its teeth are drawn: numbers alone. */
export interface PlanFindings<S extends Spec = Spec> {
  spec: S;
  /** As asked, and as drawn. */
  numbers: Train<S>;
  drawnNumbers: Train<S>;
}

/** What is known once the teeth are drawn and have been rolled. */
export interface ToothFindings<S extends Spec = Spec> extends PlanFindings<S> {
  /** As asked, and as drawn. */
  asked: FittedTrain<S>;
  drawn: FittedTrain<S>;
  /** Every change against what the file asks for. */
  adjustments: readonly Adjustment[];
  /** Of each mesh, in the order of the train's. */
  rolling: readonly RollingGap[];
}

/** What was measured on the bodies of a file of any kind. */
export interface Measured {
  spec: CommonSpec;
  bodies: BodyFindings;
  /** Where the exact surfaces are not what the file's numbers alone would make [nowhere]. */
  adjustments?: readonly Adjustment[];
}

/** What is known once the bodies are built and measured. */
export interface AllFindings<S extends Spec = Spec> extends ToothFindings<S> {
  /** As drawn. */
  parts: readonly Part[];
  bodies: BodyFindings;
  /** What was found while the train turned. */
  motion: MotionFindings;
  play: PlayRecord | TrainPlay | null;
  /** One part of each kind. */
  smallParts: SmallPart[];
  /** Holes that a script made. */
  addedHoles?: FingerGap[];
}

import type { Adjustment } from '../fit/adjustment.js';
import type { FittedSet } from '../fit/fitSet.js';
import type { SetNumbers } from '../fit/setNumbers.js';
import type { Part } from '../solid/mesh.js';
import type { CommonSpec } from '../spec/types.js';
import type { BodyFindings } from './bodies.js';
import type { MotionFindings } from './freeToTurn/freeToTurn.js';
import type { PlayRecord } from './motion/playRecord.js';
import type { RollingGap } from './rolling/rollSet.js';
import type { FingerGap } from './safety/fingerGaps.js';
import type { SmallPart } from './safety/smallParts.js';

/** What is known of a set before its teeth are drawn: numbers alone. */
export type PlanFindings = SetNumbers;

/** What is known once the teeth are drawn and have been rolled. */
export interface ToothFindings extends PlanFindings {
  set: FittedSet;
  /** Every change against what the file asks for [none]. */
  adjustments?: readonly Adjustment[];
  rolling: { inner: RollingGap; outer: RollingGap };
}

/** What was measured on the bodies of a file of any kind. */
export interface Measured {
  spec: CommonSpec;
  bodies: BodyFindings;
  /** Where the exact surfaces are not what the file's numbers alone would make [nowhere]. */
  adjustments?: readonly Adjustment[];
}

/** What is known once the bodies are built and measured. */
export interface AllFindings extends ToothFindings {
  /** Sun, planets, ring, as drawn. */
  parts: readonly Part[];
  bodies: BodyFindings;
  /** What was found while the set turned. */
  motion: MotionFindings;
  play: PlayRecord;
  /** One part of each kind. */
  smallParts: SmallPart[];
  /** Holes that a script made. */
  addedHoles?: FingerGap[];
}

import type { FittedSet } from '../fit/fitSet.js';
import type { SetRadii } from '../fit/setRadii.js';
import type { Spec } from '../spec/types.js';
import type { PairSizes } from '../train/pair.js';
import type { SetGears } from '../train/setGears.js';
import type { BodyFindings } from './bodies.js';
import type { RollingGap } from './rolling/rollSet.js';

/** What is known of a set before its teeth are drawn: numbers alone. */
export interface PlanFindings {
  spec: Spec;
  gears: SetGears;
  radii: SetRadii;
  /** Sun (1) and planet (2). */
  inner: PairSizes;
  /** Planet (1) and ring (2). */
  outer: PairSizes;
}

/** What is known once the teeth are drawn and have been rolled. */
export interface ToothFindings extends PlanFindings {
  set: FittedSet;
  rolling: { inner: RollingGap; outer: RollingGap };
}

/** What is known once the bodies are built and measured. */
export interface AllFindings extends ToothFindings {
  bodies: BodyFindings;
}

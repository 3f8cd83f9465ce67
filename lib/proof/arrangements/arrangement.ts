import type { FittedTrain } from '../../fit/train/fitTrain.js';
import type { Train } from '../../fit/train/train.js';
import type { Spec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { AllFindings, PlanFindings, ToothFindings } from '../findings.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import type { FingerGap } from '../safety/fingerGaps.js';
import type { MountingRecord, SimpleTrainRecord, TrainRecord } from '../sheetTypes.js';

/** What is asked of one kind of file alone, beside what is asked of every train. */
export interface ProofArrangement<S extends Spec = Spec> {
  /** What it is, in words. */
  title: string;
  /** Whether the parts go together, by numbers: before anything else is asked. */
  assembly(found: PlanFindings<S>): Check[];
  /** What use makes of it, by numbers. */
  use(found: PlanFindings<S>): Check[];
  /** What fingers may get into; asked again when a script made holes. */
  openings(found: PlanFindings<S> & Pick<Partial<AllFindings>, 'addedHoles'>): Check[];
  fingerGaps?(found: PlanFindings<S> & Pick<Partial<AllFindings>, 'addedHoles'>): FingerGap[];
  /** On outlines. */
  outlines(found: ToothFindings<S>): Check[];
  /**
   * How far parts can move.
   * @param asked as asked
   * @param trees of its parts as they come off the printer, by name
   * @param changed whether a script changed some part
   */
  playOf(
    asked: FittedTrain<S>,
    trees: ReadonlyMap<string, TriangleTree>,
    changed: boolean,
  ): AllFindings['play'];
  /** What that comes to. */
  play(found: AllFindings<S>): Check[];
  /** The sheet's key `train`. */
  record(train: Train<S>): TrainRecord | SimpleTrainRecord;
  /** The sheet's key `mounting`. */
  mounting?(spec: S): MountingRecord | undefined;
  /**
   * Checks of finished bodies, of which one that fails says what would help.
   * @param isProved whether another file passes every check that stops a job; none where a script changes the bodies
   */
  helpedBodies(spec: S, checks: Check[], isProved?: (other: S) => boolean): Check[];
}

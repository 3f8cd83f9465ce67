import type { GearFeatures, RingFeatures } from '../../spec/features/types.js';
import type { Bore, TrainSpec } from '../../spec/types.js';
import type { Bar } from '../../tooth/bar.js';
import type { Gear } from '../../tooth/gear.js';
import type { PairSizes } from '../../train/pair.js';
import type { Adjustment } from '../adjustment.js';
import type { MadeRadii } from '../madeRadii.js';

/** What a pair, a rack and pinion, or one gear by itself consists of, by its numbers. Lengths in mm. */
export interface Train {
  spec: TrainSpec;
  /** The pinion first. */
  gears: TrainGear[];
  bar: TrainBar | null;
  /** How the two parts run together; null for one gear by itself. */
  mesh: TrainMesh | null;
  /** Each change against the standard tooth. */
  adjustments: Adjustment[];
}

/** One gear of a train. */
export interface TrainGear {
  part: 'pinion' | 'wheel' | 'gear';
  gear: Gear;
  radii: MadeRadii;
  /** Normal distance that each flank is set back. */
  relief: number;
  hand: 'right' | 'left';
  /** Of a gear with teeth outside. */
  bore: Bore;
  /** Wall outside the root circle of a gear with teeth inside; 0 for the others. */
  rim: number;
  /** What else the file asks of it: a gear's with teeth outside, a ring's with teeth inside. */
  features: GearFeatures & RingFeatures;
}

/** The bar of a rack and pinion. Heights are counted from its datum line. */
export interface TrainBar {
  part: 'bar';
  bar: Bar;
  teeth: number;
  length: number;
  /** Wall behind the roots. */
  backing: number;
  relief: number;
  tip: number;
  root: number;
  active: number;
  /** Hand of the pinion, which says to which side the teeth lean. */
  hand: 'right' | 'left';
}

/** What a mesh comes to, whatever runs in it. Angles in radians. */
export interface TrainMesh {
  between: ['pinion', 'wheel'] | ['pinion', 'bar'];
  /** Distance of the axes, or of the pinion's axis from the datum line of the bar. */
  centreDistance: number;
  /** Working transverse pressure angle α_wt. */
  workingPressureAngle: number;
  transverseContactRatio: number;
  /** Sizes of two gears; null with a bar. */
  pair: PairSizes | null;
}

import type { AnyFeatures } from '../../features/index.js';
import type { Bore, Spec } from '../../spec/types.js';
import type { Bar } from '../../tooth/bar.js';
import type { Gear } from '../../tooth/gear.js';
import type { PairSizes } from '../../train/pair.js';
import type { Adjustment } from '../adjustment.js';
import type { MadeRadii } from '../madeRadii.js';

/**
 * Toothed bodies that run together, by their numbers, whatever the file calls them: a planetary set, a pair, a rack and
 * pinion, or one gear by itself. Lengths in mm.
 */
export interface Train<S extends Spec = Spec> {
  /** The file; in a train as drawn with module, rack, faces, gap, lips and carrier as drawn. */
  spec: S;
  /** One of each kind: equal planets are one. */
  gears: TrainGear[];
  bar: TrainBar | null;
  /** Which of them run together, and how. */
  meshes: TrainMesh[];
  /** Each change against the standard tooth. */
  adjustments: Adjustment[];
}

/** Name of a kind of gear. */
export type GearPart = 'sun' | 'planet' | 'ring' | 'pinion' | 'wheel' | 'gear';

/** One kind of gear of a train. */
export interface TrainGear {
  part: GearPart;
  /** What the file calls it. */
  key: string;
  /** How many there are. */
  count: number;
  /** Whether a carrier takes its axis around: a planet. */
  orbits: boolean;
  /** Which way it turns while the first gear turns counter-clockwise, axes held. */
  way: 1 | -1;
  gear: Gear;
  radii: MadeRadii;
  /** Whose part of the gap each of its flanks is set back by. */
  share: GapShare;
  /** Normal distance that each flank is set back. */
  relief: number;
  hand: 'right' | 'left';
  /** Of a gear with teeth outside. */
  bore: Bore;
  /** Wall outside the root circle of a gear with teeth inside; 0 for the others. */
  rim: number;
  /** What else the file asks of it. */
  features: AnyFeatures;
}

/** `fit.gapShare` of the gap, or the rest of it. */
export type GapShare = 'share' | 'rest';

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

/** What a mesh comes to, whatever runs in it; every copy of the one with every copy of the other. Angles in radians. */
export interface TrainMesh {
  between: ['sun', 'planet'] | ['planet', 'ring'] | ['pinion', 'wheel'] | ['pinion', 'bar'];
  /** Distance of the axes, or of the pinion's axis from the datum line of the bar. */
  centreDistance: number;
  /** Working transverse pressure angle α_wt. */
  workingPressureAngle: number;
  transverseContactRatio: number;
  /** Sizes of two gears, in the order of `between`; null with a bar. */
  pair: PairSizes | null;
}

/** What is set back on a flank, mm. */
export function reliefOf({ gap, gapShare }: { gap: number; gapShare: number }, share: GapShare): number {
  return share === 'share' ? gap * gapShare : gap * (1 - gapShare);
}

/** The gear of a name. @throws RangeError where the train has none */
export function gearIn<G extends TrainGear>({ gears }: { gears: readonly G[] }, part: string): G {
  const found = gears.find((one) => one.part === part);
  if (!found) throw new RangeError(`the train has no ${part}`);
  return found;
}

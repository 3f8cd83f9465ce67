import type { TrainGear } from '../../fit/train/train.js';
import type { PrintedSize } from '../sheetTypes.js';
import { outerDiameter } from './printingRecord.js';

/** A size that calipers can read on a feature, mm. */
export type FeatureSize = Pick<PrintedSize, 'part' | 'feature'> & { size: number };

/** Widths of what is let into a gear or stands on it, its crank handle and clamp ring among them, mm. */
export function featureSizes(one: TrainGear): FeatureSize[] {
  const { part, features } = one;
  const { screw, nut, knob, crank, hole, dimple, pocket, flange, bolts, mount } = features;
  return given([
    [part, 'screw hole', screw?.diameter ?? nut?.diameter],
    [part, 'countersink', screw && screw.countersink !== 'none' ? screw.headDiameter : undefined],
    [part, 'nut pocket', nut?.acrossFlats],
    [part, 'knob', knob?.diameter],
    [part, 'crank socket', crank && crank.acrossFlats + crank.clearance],
    ['crank-handle', 'peg', crank?.handle === undefined ? undefined : crank.acrossFlats],
    [part, 'finger hole', hole?.diameter],
    [part, 'dimple', dimple?.diameter],
    [part, 'pocket', pocket?.diameter],
    [part, 'flange', flange?.diameter],
    [part, 'bolt hole', bolts?.diameter],
    [part, 'screw hole', mount?.diameter],
    [part, 'countersink', mount?.headDiameter],
    ['clamp-ring', 'outer diameter', mount && flange?.diameter],
    ['clamp-ring', 'opening', mount && outerDiameter(one) + 2 * mount.clearance],
    ['clamp-ring', 'nut pocket', mount?.nutFlats],
  ]);
}

function given(
  sizes: readonly [FeatureSize['part'], FeatureSize['feature'], number | undefined][],
): FeatureSize[] {
  return sizes.flatMap(([part, feature, size]) => (size === undefined ? [] : [{ part, feature, size }]));
}

/** Sizes as drawn beside the same ones as expected on the print. */
export function besideDrawn(asked: readonly FeatureSize[], drawn: readonly FeatureSize[]): PrintedSize[] {
  return asked.map(({ part, feature, size }, i) => ({ part, feature, drawn: drawn[i].size, expected: size }));
}

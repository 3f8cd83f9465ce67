import type { GearFeatures, RingFeatures } from '../../spec/features/types.js';
import type { PlanetarySpec } from '../../spec/types.js';
import type { PrintedSize } from '../sheetTypes.js';

/** A size that calipers can read on a feature, mm. */
export type FeatureSize = Pick<PrintedSize, 'part' | 'feature'> & { size: number };

/**
 * Widths of what is let into the parts or stands on them, as the file has them.
 * @param outer outer diameter of the ring, mm
 */
export function featureSizes({ sun, planets, ring }: PlanetarySpec, outer: number): FeatureSize[] {
  const { hole, dimple, pocket } = planets;
  const { flange, mount } = ring;
  return [
    ...gearFeatureSizes('sun', sun),
    ...given([
      ['planet', 'finger hole', hole?.diameter],
      ['planet', 'dimple', dimple?.diameter],
      ['planet', 'pocket', pocket?.diameter],
    ]),
    ...ringFeatureSizes('ring', ring),
    ...given([
      ['ring', 'screw hole', mount?.diameter],
      ['ring', 'countersink', mount?.headDiameter],
      ['clamp-ring', 'outer diameter', mount && flange?.diameter],
      ['clamp-ring', 'opening', mount && outer + 2 * mount.clearance],
      ['clamp-ring', 'nut pocket', mount?.nutFlats],
    ]),
  ];
}

/** The same of one gear with teeth outside, its crank handle among them. */
export function gearFeatureSizes(part: FeatureSize['part'], features: GearFeatures): FeatureSize[] {
  const { screw, nut, knob, crank } = features;
  return given([
    [part, 'screw hole', screw?.diameter ?? nut?.diameter],
    [part, 'countersink', screw && screw.countersink !== 'none' ? screw.headDiameter : undefined],
    [part, 'nut pocket', nut?.acrossFlats],
    [part, 'knob', knob?.diameter],
    [part, 'crank socket', crank && crank.acrossFlats + crank.clearance],
    ['crank-handle', 'peg', crank?.handle === undefined ? undefined : crank.acrossFlats],
  ]);
}

/** The same of one gear with teeth inside; its mount is a set's. */
export function ringFeatureSizes(part: FeatureSize['part'], { flange, bolts }: RingFeatures): FeatureSize[] {
  return given([
    [part, 'flange', flange?.diameter],
    [part, 'bolt hole', bolts?.diameter],
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

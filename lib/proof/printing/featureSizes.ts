import type { PlanetarySpec } from '../../spec/types.js';
import type { PrintedSize } from '../sheetTypes.js';

/** A size that calipers can read on a feature, mm. */
export type FeatureSize = Pick<PrintedSize, 'part' | 'feature'> & { size: number };

/**
 * Widths of what is let into the parts or stands on them, as the file has them.
 * @param outer outer diameter of the ring, mm
 */
export function featureSizes({ sun, planets, ring }: PlanetarySpec, outer: number): FeatureSize[] {
  const { screw, nut, knob, crank } = sun;
  const { hole, dimple, pocket } = planets;
  const { flange, bolts, mount } = ring;
  const sizes: [FeatureSize['part'], FeatureSize['feature'], number | undefined][] = [
    ['sun', 'screw hole', screw?.diameter ?? nut?.diameter],
    ['sun', 'countersink', screw && screw.countersink !== 'none' ? screw.headDiameter : undefined],
    ['sun', 'nut pocket', nut?.acrossFlats],
    ['sun', 'knob', knob?.diameter],
    ['sun', 'crank socket', crank && crank.acrossFlats + crank.clearance],
    ['crank-handle', 'peg', crank?.handle === undefined ? undefined : crank.acrossFlats],
    ['planet', 'finger hole', hole?.diameter],
    ['planet', 'dimple', dimple?.diameter],
    ['planet', 'pocket', pocket?.diameter],
    ['ring', 'flange', flange?.diameter],
    ['ring', 'bolt hole', bolts?.diameter],
    ['ring', 'screw hole', mount?.diameter],
    ['ring', 'countersink', mount?.headDiameter],
    ['clamp-ring', 'outer diameter', mount && flange?.diameter],
    ['clamp-ring', 'opening', mount && outer + 2 * mount.clearance],
    ['clamp-ring', 'nut pocket', mount?.nutFlats],
  ];
  return sizes.flatMap(([part, feature, size]) => (size === undefined ? [] : [{ part, feature, size }]));
}

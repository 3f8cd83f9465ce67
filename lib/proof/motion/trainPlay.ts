import { backlash } from '../../fit/play/formulas.js';
import type { FittedTrain } from '../../fit/train/fitTrain.js';
import { degrees, gearSizes } from '../../tooth/gear.js';
import { allowedGapError } from '../allowedGapError.js';
import { leastDistance } from '../mesh/leastDistance.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import type { MeshRecord } from '../sheetTypes.js';
import type { Confirmed } from './confirmed.js';
import { movedTree } from './movedTree.js';
import type { Axial } from './playRecord.js';

/** How far the parts of a pair or of a rack and pinion can move, their axes and guides held: the sheet's key `play`. */
export interface TrainPlay {
  meshes: { between: MeshRecord['between']; normalBacklash: number; circumferentialBacklash: number }[];
  /** Way of the pinion's mate from the middle to either stop, the pinion held: a wheel's turn, or a bar's way. */
  mate: { part: 'wheel' | 'bar'; degrees: number | null; mm: number | null };
  /** Way of the pinion along its axis against its mate, mm; null where the teeth do not hold it. */
  axial: Axial;
  /** What keeps pinion and mate together along the axis; empty when nothing does. */
  heldBy: string[];
  /** The furthest motions made on the finished meshes. */
  confirmed: Confirmed[];
}

/**
 * Play of the two parts. Along the axis mirrored helices hold each other: one half's flanks close as fast as the
 * other's open, and turning closes one side only, so neither part gives way before gap / sin β_b.
 * Source: derived, as `axialPlay` of a planetary set; ISO 21771 for the base helix.
 * @param train as asked
 * @param trees of its parts as they come off the printer, by name
 */
export function trainPlay(train: FittedTrain, trees: ReadonlyMap<string, TriangleTree>): TrainPlay | null {
  const { spec, meshes, gears, bar } = train;
  const [mesh] = meshes;
  if (!mesh) return null;
  const { gap } = spec.fit;
  const [pinion, wheel] = gears;
  const { baseHelixAngle } = gearSizes(pinion.gear);
  const { normal, circumferential } = backlash(mesh, gap, baseHelixAngle);
  const held = spec.helix.form === 'herringbone';
  const way = held ? gap / Math.sin(baseHelixAngle) : null;
  // Both flanks lie on the line of action, which unwinds from the base circles.
  const along = gap / Math.cos(baseHelixAngle);
  return {
    meshes: [{ between: mesh.between, normalBacklash: normal, circumferentialBacklash: circumferential }],
    mate: bar
      ? { part: 'bar', degrees: null, mm: along / Math.cos(mesh.workingPressureAngle) }
      : { part: 'wheel', degrees: degrees(along / gearSizes(wheel.gear).baseRadius), mm: null },
    axial: { up: way, down: way },
    heldBy: held ? ['herringbone teeth'] : [],
    confirmed: way === null ? [] : confirmedWays(train, trees, way),
  };
}

/** Short of the way by the error that the meshes' gap may have, nothing meets; beyond it by twice that, teeth do. */
function confirmedWays(
  { spec, meshes: [mesh] }: FittedTrain,
  trees: ReadonlyMap<string, TriangleTree>,
  way: number,
): Confirmed[] {
  const [pinion, mate] = mesh.between.map((name) => trees.get(name)!);
  const error = allowedGapError(spec) / spec.fit.gap;
  const apart = (shift: number) =>
    leastDistance(movedTree(pinion, [0, 0, shift, 0, 0, 0], [0, 0, 0]), mate, spec.fit.gap)?.distance ??
    spec.fit.gap;
  return ([1, -1] as const).map((sign) => ({
    motion: sign > 0 ? 'pinion up' : 'pinion down',
    clear: apart(sign * way * (1 - error)) > 0,
    meets: apart(sign * way * (1 + 2 * error)) === 0,
  }));
}

import { backlash } from '../../fit/play/formulas.js';
import { type MeshPlay, meshPlay, type Reach } from '../../fit/play/meshPlay.js';
import type { FittedTrain } from '../../fit/train/fitTrain.js';
import { gearIn } from '../../fit/train/train.js';
import { degrees, gearSizes } from '../../tooth/gear.js';
import { allowedGapError } from '../allowedGapError.js';
import { leastDistance } from '../mesh/leastDistance.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import type { MeshRecord } from '../sheetTypes.js';
import type { Confirmed } from './confirmed.js';
import { looseMeshOf } from './looseSetOf.js';
import { movedTree } from './movedTree.js';
import { type Axial, finite, type TiltRecord, tiltRecord } from './playRecord.js';

/** How far the parts of a pair or of a rack and pinion can move, their axes and guides held: the sheet's key `play`. */
export interface TrainPlay {
  meshes: { between: MeshRecord['between']; normalBacklash: number; circumferentialBacklash: number }[];
  /** Way of the pinion's mate from the middle to either stop, the pinion held: a wheel's turn, or a bar's way. */
  mate: { part: 'wheel' | 'bar'; degrees: number | null; mm: number | null };
  /** Way of the pinion along its shaft against its mate, mm; null where the teeth do not hold it. */
  axial: Axial;
  /** How much nearer to its mate the pinion's axis may be put before teeth bind, mm. */
  nearer: number | null;
  /** How far that axis may lean before teeth bind: in the plane of both axes, and across it. */
  leaning: { inPlane: TiltRecord; outOfPlane: TiltRecord };
  /** What keeps pinion and mate together along the axis; empty when nothing does. */
  heldBy: string[];
  /** The furthest motions made on the finished meshes. */
  confirmed: Confirmed[];
}

/**
 * Play of the two parts, by the linear programs over all contacts that planetary sets are asked with (`meshPlay`).
 * @param train as asked
 * @param trees of its parts as they come off the printer, by name
 */
export function trainPlay(train: FittedTrain, trees: ReadonlyMap<string, TriangleTree>): TrainPlay | null {
  const { spec, meshes, bar } = train;
  const [mesh] = meshes;
  if (!mesh) return null;
  const { baseHelixAngle } = gearSizes(gearIn(train, mesh.between[0]).gear);
  const { normal, circumferential } = backlash(mesh, spec.fit.gap, baseHelixAngle);
  const play = meshPlay(looseMeshOf(train));
  const { up, down, mate, nearer, inPlane, outOfPlane } = play;
  const held = Number.isFinite(up.worst) && Number.isFinite(down.worst);
  return {
    meshes: [{ between: mesh.between, normalBacklash: normal, circumferentialBacklash: circumferential }],
    mate: bar
      ? { part: 'bar', degrees: null, mm: finite(mate.worst) }
      : { part: 'wheel', degrees: finite(degrees(mate.worst)), mm: null },
    axial: { up: finite(up.worst), down: finite(down.worst) },
    nearer: finite(nearer.worst),
    leaning: {
      inPlane: tiltRecord(inPlane.worst, spec.faceWidth),
      outOfPlane: tiltRecord(outOfPlane.worst, spec.faceWidth),
    },
    heldBy: held ? [`${spec.helix.form} teeth`] : [],
    confirmed: confirmedMotions(train, trees, play),
  };
}

/** Names of the motions along the shaft. */
export const AXIAL = ['pinion up', 'pinion down'];

/** Leaning bodies meet between the planes in which contacts are taken: their motion is known half as well. */
const LEAN_MARGIN = 2;

/** Short of each motion by the error that the meshes' gap may have, nothing meets; beyond it by twice that, teeth do. */
function confirmedMotions(
  { spec, meshes: [{ between }], gears }: FittedTrain,
  trees: ReadonlyMap<string, TriangleTree>,
  { up, down, nearer, inPlane, outOfPlane, mate }: MeshPlay,
): Confirmed[] {
  const error = allowedGapError(spec) / spec.fit.gap;
  const [first] = between;
  // How near an axis may be put, and how far it may lean, is asked for no more than that nothing meets short of it.
  const tried: [string, Reach, number, asked: 'stop' | 'room'][] = [
    [AXIAL[0], up, 1, 'stop'],
    [AXIAL[1], down, 1, 'stop'],
    [`${mate.part} moved on`, mate, 1, 'stop'],
    [`${first} nearer`, nearer, 1, 'room'],
    [`${first} leaning in the plane of the axes`, inPlane, LEAN_MARGIN, 'room'],
    [`${first} leaning across that plane`, outOfPlane, LEAN_MARGIN, 'room'],
  ];
  return tried.flatMap(([motion, { part, standing }, margin, asked]): Confirmed[] => {
    if (!Number.isFinite(standing.value)) return [];
    const [moving, still] = [part, between.find((one) => one !== part)!].map((name) => trees.get(name)!);
    const [x, y] = gears.find((gear) => gear.part === part)?.places[0].centre ?? [0, 0];
    const meets = (share: number) => {
      const [dx, dy, dz, rx, ry, rz] = standing.motions[part].map((number) => share * number);
      const moved = movedTree(moving, [dx, dy, dz, rx, ry, rz], [x, y, spec.faceWidth / 2]);
      return leastDistance(moved, still, 0) !== null;
    };
    const beyond = asked === 'stop' ? meets(1 + 2 * margin * error) : null;
    return [{ motion, clear: !meets(1 - margin * error), meets: beyond }];
  });
}

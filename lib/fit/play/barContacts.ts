import { type BarProfile, halfThicknessAt, roundPoints } from '../../tooth/bar.js';
import type { Contact, Feature } from './contact.js';
import { type LinearPlace, readLinear } from './linearContact.js';
import { type LooseFrame, type LooseGear, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { writeSliceSlopes } from './sliceMotion.js';
import type { SpaceWall } from './spaceWall.js';
import { addCorner, addTip, type Facing, reachOf, tipHalfAngle, wallsOf } from './tipContacts.js';

/** A bar below its pinion, teeth towards it. Lengths in mm. */
export interface LooseBar {
  name: string;
  profile: BarProfile;
  teeth: number;
  /** y of its datum line, and x of the first tooth's middle at z = 0. */
  datum: number;
  firstTooth: number;
  /** How far the teeth are carried towards +x for one mm along the axis, in the lower half of a herringbone. */
  slope: number;
}

/** Teeth to each side of the pinion that are looked at. */
const BESIDE = 2;
/** Lines of a wall stay this share of the gap from the curve. */
const CHORD_SHARE = 0.01;

/**
 * Where a pinion and its bar would touch in one slice: every place of both lines of action at which a pair of flanks
 * stands, the pinion's tips over the bar's roots and the bar's tips under the pinion's.
 *
 * A bar's flank is plane and an involute's support grows evenly as it turns, so the gap is linear in shifts and turns:
 * gap + cos β_b n · (shift of the pinion − shift of the bar) + cos β_b r_b × turn, n the flank's normal in the slice.
 * Source: derived; ISO 21771 for the line of action, which stands square to the flank and crosses the pinion's reference
 * circle below its axis.
 */
export function barContacts(
  frame: LooseFrame,
  pinion: LooseGear,
  bar: LooseBar,
  slice: Slice,
  walls: BarMeshWalls,
): Contact[] {
  const place = { frame, pinion, bar, slice };
  const tip = tipRadiusAt(frame, pinion, slice);
  const { root, tip: barTip } = bar.profile;
  const below = -bar.datum;
  const contacts = [
    ...([1, -1] as const).flatMap((side) => flanks(place, side, tip)),
    touching(place, 'tips', below - tip - root, [0, 1], [0, -tip], 0),
    touching(place, 'tips', below - pinion.profile.rootRadius - barTip, [0, 1], [0, bar.datum + barTip], 0),
  ];
  for (const x of teethNear(place)) addCorners(contacts, place, x, tip, walls);
  return contacts;
}

/** x of the middles of the bar's teeth beside the pinion, as the slice shows them. */
function teethNear({ frame, bar, slice }: Meeting): number[] {
  const climb = slice.way === 1 ? slice.z : frame.faceWidth - slice.z;
  const first = bar.firstTooth + bar.slope * climb;
  const pitch = bar.profile.transversePitch;
  const nearest = Math.round(-first / pitch);
  const near = Array.from({ length: 2 * BESIDE + 1 }, (_, i) => nearest - BESIDE + i);
  return near.filter((k) => k >= 0 && k < bar.teeth).map((k) => first + k * pitch);
}

/** Corners of the bar's tip against the pinion's tooth spaces, and those of the pinion's tips against the bar's tooth. */
function addCorners(
  contacts: Contact[],
  meeting: Meeting,
  toothX: number,
  tipRadius: number,
  walls: BarMeshWalls,
): void {
  const { frame, pinion, bar, slice } = meeting;
  const { profile } = pinion;
  const common = {
    z: slice.z,
    height: slice.z - frame.faceWidth / 2,
    reach: reachOf(frame, profile.gear.module),
    toothB: rotationAt(frame, pinion, slice),
    pitchB: (2 * Math.PI) / profile.gear.teeth,
  };
  const twist = twistAt(frame, pinion, slice);
  const underPinion: Facing = {
    ...common,
    ...{ between: [bar.name, pinion.name], twistA: 0, twistB: twist, apartX: toothX, apartY: bar.datum },
  };
  const { tip, helixAngle } = bar.profile;
  const half = halfThicknessAt(bar.profile, tip) / Math.cos(helixAngle);
  for (const x of [half, -half]) addCorner(contacts, underPinion, x, tip, walls.pinion);

  const overBar: Facing = {
    ...common,
    ...{ between: [pinion.name, bar.name], twistA: twist, twistB: 0, apartX: -toothX, apartY: -bar.datum },
  };
  const land = tipHalfAngle(frame, pinion, slice);
  const nearest = Math.round((-Math.PI / 2 - common.toothB) / common.pitchB);
  for (let k = nearest - 1; k <= nearest + 1; k++)
    for (const corner of [-land, land]) {
      const angle = common.toothB + k * common.pitchB + corner;
      const [x, y] = [tipRadius * Math.cos(angle), tipRadius * Math.sin(angle)];
      for (const wall of walls.bar) addTip(contacts, overBar, x, y, { wall, cos: 1, sin: 0 });
    }
}

/** What tips meet: both sides of a tooth of each. */
interface BarMeshWalls {
  pinion: readonly SpaceWall[];
  bar: readonly SpaceWall[];
}

/** The walls of a pinion and its bar, the same in every slice. */
export function barMeshWalls(frame: LooseFrame, pinion: LooseGear, bar: LooseBar): BarMeshWalls {
  return { pinion: wallsOf(frame, pinion), bar: barWalls(bar.profile, CHORD_SHARE * frame.gap) };
}

/** Both sides of a tooth of a bar, its middle on the datum line at the origin, as `toothWalls` has those of a gear. */
function barWalls(profile: BarProfile, sagitta: number): SpaceWall[] {
  const { tip, helixAngle, bar } = profile;
  const up = [...roundPoints(profile, sagitta), [halfThicknessAt(profile, tip) / Math.cos(helixAngle), tip]];
  const down = up.map(([x, y]) => [-x, y]).reverse();
  return [up, down].map((points, i) => ({
    points: Float64Array.from(points.flat()),
    empty: 1,
    tipFirst: i === 1,
    deepest: bar.module / 4,
  }));
}

interface Meeting {
  frame: LooseFrame;
  pinion: LooseGear;
  bar: LooseBar;
  slice: Slice;
}

/** @param side of the bar's teeth: 1 the one that looks to +x */
function flanks(meeting: Meeting, side: 1 | -1, tipRadius: number): Contact[] {
  const { frame, pinion, bar } = meeting;
  const { sizes } = pinion.profile;
  const { halfThickness, helixAngle, tip, form } = bar.profile;
  const alpha = sizes.transversePressureAngle;
  const [nx, ny] = [side * Math.cos(alpha), Math.sin(alpha)];
  const cosine = Math.cos(sizes.baseHelixAngle);
  const found: Contact[] = [];
  for (const middle of teethNear(meeting)) {
    // Where the flank crosses the datum line, from the pinion's axis.
    const atDatum = middle + (side * halfThickness) / Math.cos(helixAngle);
    const along = nx * atDatum + ny * (bar.datum + sizes.referenceRadius);
    const [x, y] = [along * nx, along * ny - sizes.referenceRadius];
    const height = y - bar.datum;
    if (height > tip || height < form || Math.hypot(x, y) > tipRadius) continue;
    const perTurn = side * sizes.baseRadius;
    found.push(touching(meeting, 'flanks', frame.gap, [cosine * nx, cosine * ny], [x, y], cosine * perTurn));
  }
  return found;
}

/**
 * @param gap at rest, mm
 * @param normal how it grows as the pinion shifts
 * @param at the place, from the pinion's axis
 * @param perTurn how it grows as the pinion turns, mm for each radian
 */
function touching(
  { frame, pinion, bar, slice }: Meeting,
  feature: Feature,
  gap: number,
  [nx, ny]: readonly [number, number],
  [x, y]: readonly [number, number],
  perTurn: number,
): Contact {
  const slopes = new Float64Array(12);
  const height = slice.z - frame.faceWidth / 2;
  writeSliceSlopes(slopes, 0, nx, ny, perTurn, twistAt(frame, pinion, slice), height, x, y);
  slopes[6] = -nx;
  slopes[7] = -ny;
  // A bar that has risen shows the slice below, whose teeth stand farther back.
  slopes[8] = nx * bar.slope * slice.way;
  const place: LinearPlace = { gap, slopes };
  return {
    between: [pinion.name, bar.name],
    feature,
    z: slice.z,
    smooth: true,
    place,
    read: readLinear,
  };
}

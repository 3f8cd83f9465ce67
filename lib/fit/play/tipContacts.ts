import type { Contact } from './contact.js';
import { type LooseGear, type LooseSet, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { turnAt, writeSliceSlopes } from './sliceMotion.js';
import { isPastTip, type SpaceWall, toothWalls, wallDistance } from './spaceWall.js';

/** Teeth to each side of the line of centres whose tips are looked at. */
const BESIDE = 1;
/** Tips farther than this many gaps and half modules from their mate are left out: no play reaches that far. */
const REACH_GAPS = 3;
/** Lines of a wall stay this share of the gap from the curve. */
const CHORD_SHARE = 0.01;

/** What of the mate a tip may meet: its root circle, or one side of a tooth turned to where it stands. */
type Mate =
  | { wall: null /** 1 outside a root circle, −1 inside a ring's. */; sign: 1 | -1; rootRadius: number }
  | { wall: SpaceWall; cos: number; sin: number };

/**
 * Where the tips of one gear would touch the roots of its mate in one slice: the point of each tip land nearest to
 * the line of centres against the root circle, and both corners of the land against both sides of the tooth space.
 * @param walls of the mate, `wallsOf`
 */
export function tipContacts(
  set: LooseSet,
  tips: LooseGear,
  roots: LooseGear,
  walls: readonly SpaceWall[],
  slice: Slice,
): Contact[] {
  const { gear } = tips.profile;
  const half = tipHalfAngle(set, tips, slice);
  const toMate = Math.atan2(roots.centre[1] - tips.centre[1], roots.centre[0] - tips.centre[0]);
  // A planet's tips meet the ring on the side away from the ring's axis, and so do the ring's own.
  const towards = roots.profile.gear.internal ? toMate + Math.PI : toMate;
  const pitch = (2 * Math.PI) / gear.teeth;
  const tooth = rotationAt(set, tips, slice);
  const nearest = Math.round((towards - tooth) / pitch);
  const radius = tipRadiusAt(set, tips, slice);
  const contacts: Contact[] = [];
  for (let k = nearest - BESIDE; k <= nearest + BESIDE; k++) {
    const centre = tooth + k * pitch;
    const off = centre - towards;
    const middle = towards + Math.sign(off) * Math.max(0, Math.abs(off) - half);
    addWithin(contacts, set, tips, roots, slice, radius, middle, toRootCircle(roots), true);
    addCorner(contacts, set, tips, roots, walls, slice, radius, centre - half);
    addCorner(contacts, set, tips, roots, walls, slice, radius, centre + half);
  }
  return contacts;
}

/** Adds the contacts of a corner of a tip land with both sides of the tooth space. */
function addCorner(
  contacts: Contact[],
  set: LooseSet,
  tips: LooseGear,
  roots: LooseGear,
  walls: readonly SpaceWall[],
  slice: Slice,
  radius: number,
  corner: number,
): void {
  for (const wall of walls) {
    const mate = toWall(set, roots, wall, slice, tips, radius, corner);
    addWithin(contacts, set, tips, roots, slice, radius, corner, mate, false);
  }
}

/** Adds the contact of a point of a tip, given by radius and angle, with a place that any play may reach. */
function addWithin(
  contacts: Contact[],
  set: LooseSet,
  tips: LooseGear,
  roots: LooseGear,
  slice: Slice,
  radius: number,
  angle: number,
  mate: Mate,
  smooth: boolean,
): void {
  const x = radius * Math.cos(angle);
  const y = radius * Math.sin(angle);
  const atX = tips.centre[0] + x - roots.centre[0];
  const atY = tips.centre[1] + y - roots.centre[1];
  const reach = REACH_GAPS * set.gap + tips.profile.gear.module / 2;
  const gap = distanceTo(mate, atX, atY);
  // Below 0 the corner stands in another tooth space and sees this wall through its tooth; so may one past the tip.
  if (gap >= 0 && gap < reach && !isBeyondTip(mate, atX, atY))
    contacts.push(tipContact(set, tips, roots, slice, x, y, mate, smooth));
}

/** The walls that tips of other gears meet on a gear. */
export function wallsOf(set: LooseSet, gear: LooseGear): readonly SpaceWall[] {
  return toothWalls(gear.profile, CHORD_SHARE * set.gap);
}

/** Half the angle of the tip land, wider where a bevel has cut it, radians. */
export function tipHalfAngle(set: LooseSet, gear: LooseGear, slice: Slice): number {
  const flank = gear.profile.segments[2];
  if (flank.kind !== 'involute') return 0;
  const roll = Math.sqrt(Math.max(0, (tipRadiusAt(set, gear, slice) / flank.baseRadius) ** 2 - 1));
  return Math.abs(flank.start + flank.turn * (roll - Math.atan(roll)));
}

function toRootCircle({ profile }: LooseGear): Mate {
  return { wall: null, sign: profile.gear.internal ? -1 : 1, rootRadius: profile.rootRadius };
}

/** One side of the mate's tooth that is nearest to a corner as the set stands. */
function toWall(
  set: LooseSet,
  roots: LooseGear,
  wall: SpaceWall,
  slice: Slice,
  tips: LooseGear,
  radius: number,
  corner: number,
): Mate {
  const pitch = (2 * Math.PI) / roots.profile.gear.teeth;
  const tooth = rotationAt(set, roots, slice);
  const middle = Math.floor(wall.points.length / 4);
  const wallAngle = Math.atan2(wall.points[2 * middle + 1], wall.points[2 * middle]);
  const x = tips.centre[0] + radius * Math.cos(corner) - roots.centre[0];
  const y = tips.centre[1] + radius * Math.sin(corner) - roots.centre[1];
  const turn = tooth + pitch * Math.round((Math.atan2(y, x) - tooth - wallAngle) / pitch);
  return { wall, cos: Math.cos(turn), sin: Math.sin(turn) };
}

/**
 * How far a point is from what it may meet, mm; the point in the mate's own place.
 * @param normal takes x and y of the way that leads away [not worked out]
 */
function distanceTo(mate: Mate, x: number, y: number, normal?: Float64Array): number {
  if (mate.wall === null) {
    const radius = Math.sqrt(x * x + y * y);
    if (normal) {
      normal[0] = (mate.sign * x) / radius;
      normal[1] = (mate.sign * y) / radius;
    }
    return mate.sign * (radius - mate.rootRadius);
  }
  const { wall, cos, sin } = mate;
  const distance = wallDistance(wall, x * cos + y * sin, y * cos - x * sin, normal);
  if (normal) turnBy(normal, cos, sin);
  return distance;
}

/** True where the point stands over or behind a tip of the mate. */
function isBeyondTip(mate: Mate, x: number, y: number): boolean {
  if (mate.wall === null) return false;
  const { wall, cos, sin } = mate;
  return isPastTip(wall, x * cos + y * sin, y * cos - x * sin);
}

function turnBy(vector: Float64Array, cos: number, sin: number): void {
  const x = vector[0];
  const y = vector[1];
  vector[0] = x * cos - y * sin;
  vector[1] = x * sin + y * cos;
}

/**
 * The tip at (x, y) from the axis of one gear against its mate; exact in the plane. A tip that rises shows in the
 * slice the one below it, so that screwing along its own helix leaves it where it is; so does the mate.
 */
function tipContact(
  set: LooseSet,
  tips: LooseGear,
  roots: LooseGear,
  slice: Slice,
  x: number,
  y: number,
  mate: Mate,
  smooth: boolean,
): Contact {
  const place: TipPlace = {
    mate,
    x,
    y,
    atX: tips.centre[0] + x - roots.centre[0],
    atY: tips.centre[1] + y - roots.centre[1],
    height: slice.z - set.faceWidth / 2,
    twistA: twistAt(set, tips, slice),
    twistB: twistAt(set, roots, slice),
  };
  return { between: [tips.name, roots.name], feature: 'tips', z: slice.z, smooth, place, read: readTip };
}

/** A tip and what it may meet. A is the gear whose tip it is, B the mate. */
interface TipPlace {
  mate: Mate;
  /** The tip from its own axis, mm. */
  x: number;
  y: number;
  /** The tip from the mate's axis, mm. */
  atX: number;
  atY: number;
  /** Of the slice above mid face, mm. */
  height: number;
  /** Of the helices in this slice, radians/mm. */
  twistA: number;
  twistB: number;
}

/** Room for a normal while a gap is read. */
const NORMAL = new Float64Array(2);

function readTip(
  place: TipPlace,
  motions: Float64Array,
  a: number,
  b: number,
  slopes?: Float64Array,
): number {
  const { mate, x, y, atX, atY, height, twistA, twistB } = place;
  const turnA = turnAt(motions, a, twistA, x, y);
  const turnB = turnAt(motions, b, twistB, atX, atY);
  const dx = atX + motions[a] - motions[b] + (motions[a + 4] - motions[b + 4]) * height - turnA * y;
  const dy = atY + motions[a + 1] - motions[b + 1] - (motions[a + 3] - motions[b + 3]) * height + turnA * x;
  // Seen from the mate, which has turned on itself.
  const cos = Math.cos(turnB);
  const sin = Math.sin(turnB);
  const seenX = dx * cos + dy * sin;
  const seenY = dy * cos - dx * sin;
  if (!slopes) return distanceTo(mate, seenX, seenY);
  const gap = distanceTo(mate, seenX, seenY, NORMAL);
  turnBy(NORMAL, cos, sin);
  const nx = NORMAL[0];
  const ny = NORMAL[1];
  writeSliceSlopes(slopes, 0, nx, ny, ny * x - nx * y, twistA, height, x, y);
  writeSliceSlopes(slopes, 6, -nx, -ny, nx * dy - ny * dx, twistB, height, atX, atY);
  return gap;
}

/** Where the tip circles of two planets would touch in one slice; a little early when no two tips face each other. */
export function neighbourContact(set: LooseSet, first: LooseGear, second: LooseGear, slice: Slice): Contact {
  const place: NeighbourPlace = {
    height: slice.z - set.faceWidth / 2,
    reach: tipRadiusAt(set, first, slice) + tipRadiusAt(set, second, slice),
    apartX: second.centre[0] - first.centre[0],
    apartY: second.centre[1] - first.centre[1],
  };
  const { z } = slice;
  const between = [first.name, second.name] as const;
  return { between, feature: 'neighbours', z, smooth: true, place, read: readNeighbours };
}

/** Two tip circles, mm. */
interface NeighbourPlace {
  /** Of the slice above mid face. */
  height: number;
  /** Sum of the radii. */
  reach: number;
  /** From the first axis to the second. */
  apartX: number;
  apartY: number;
}

function readNeighbours(
  { height, reach, apartX, apartY }: NeighbourPlace,
  motions: Float64Array,
  a: number,
  b: number,
  slopes?: Float64Array,
): number {
  const dx = apartX + motions[b] - motions[a] + (motions[b + 4] - motions[a + 4]) * height;
  const dy = apartY + motions[b + 1] - motions[a + 1] - (motions[b + 3] - motions[a + 3]) * height;
  const distance = Math.sqrt(dx * dx + dy * dy);
  if (slopes) {
    writeSliceSlopes(slopes, 0, -dx / distance, -dy / distance, 0, 0, height, 0, 0);
    writeSliceSlopes(slopes, 6, dx / distance, dy / distance, 0, 0, height, 0, 0);
  }
  return distance - reach;
}

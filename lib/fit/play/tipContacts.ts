import type { Contact } from './contact.js';
import { type LooseFrame, type LooseGear, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { addStretchSlopes, stretch, turnAt, writeSliceSlopes } from './sliceMotion.js';
import { isPastTip, type SpaceWall, toothWalls, wallDistance } from './spaceWall.js';

/** Teeth to each side of the line of centres whose tips are looked at. */
const BESIDE = 1;
/** Tips farther than this many gaps and half modules from their mate are left out: no play reaches that far. */
const REACH_GAPS = 3;
/** Lines of a wall stay this share of the gap from the curve. */
const CHORD_SHARE = 0.01;

/** What of the mate a tip may meet: its root circle, or one side of a tooth turned to where it stands. */
type Mate = RootCircle | StandingWall;

interface RootCircle {
  wall: null;
  /** 1 outside the circle, −1 inside a ring's. */
  sign: 1 | -1;
  radius: number;
}

export interface StandingWall {
  wall: SpaceWall;
  cos: number;
  sin: number;
}

/** Two gears in mesh as one slice shows them. A is the one whose tips are looked at, B its mate. mm, radians. */
export interface Facing {
  between: readonly [string, string];
  z: number;
  /** Of the slice above mid face. */
  height: number;
  /** Of the helices, radians/mm. */
  twistA: number;
  twistB: number;
  /** From the axis of B to that of A. */
  apartX: number;
  apartY: number;
  /** What is farther from B than this is left out. */
  reach: number;
  /** Where the teeth of B stand. */
  toothB: number;
  pitchB: number;
}

/**
 * Where the tips of one gear would touch the roots of its mate in one slice: the point of each tip land nearest to
 * the line of centres against the root circle, and both corners of the land against both sides of the tooth space.
 * @param walls of the mate, `wallsOf`
 */
export function tipContacts(
  set: LooseFrame,
  tips: LooseGear,
  roots: LooseGear,
  walls: readonly SpaceWall[],
  slice: Slice,
): Contact[] {
  const facing: Facing = {
    between: [tips.name, roots.name],
    z: slice.z,
    height: slice.z - set.faceWidth / 2,
    twistA: twistAt(set, tips, slice),
    twistB: twistAt(set, roots, slice),
    apartX: tips.centre[0] - roots.centre[0],
    apartY: tips.centre[1] - roots.centre[1],
    reach: reachOf(set, tips.profile.gear.module),
    toothB: rotationAt(set, roots, slice),
    pitchB: (2 * Math.PI) / roots.profile.gear.teeth,
  };
  const radius = tipRadiusAt(set, tips, slice);
  const half = tipHalfAngle(set, tips, slice);
  const toMate = Math.atan2(-facing.apartY, -facing.apartX);
  // A planet's tips meet the ring on the side away from the ring's axis, and so do the ring's own.
  const towards = roots.profile.gear.internal ? toMate + Math.PI : toMate;
  const pitch = (2 * Math.PI) / tips.profile.gear.teeth;
  const tooth = rotationAt(set, tips, slice);
  const nearest = Math.round((towards - tooth) / pitch);
  const circle = rootCircle(roots);
  const contacts: Contact[] = [];
  for (let k = nearest - BESIDE; k <= nearest + BESIDE; k++) {
    const centre = tooth + k * pitch;
    const off = centre - towards;
    const middle = towards + Math.sign(off) * Math.max(0, Math.abs(off) - half);
    addTip(contacts, facing, radius * Math.cos(middle), radius * Math.sin(middle), circle);
    for (const corner of [centre - half, centre + half])
      addCorner(contacts, facing, radius * Math.cos(corner), radius * Math.sin(corner), walls);
  }
  return contacts;
}

/**
 * Adds the contacts of a corner of a tip land with both sides of a gear's tooth space.
 * @param x, y of the corner, from the axis of A
 */
export function addCorner(
  contacts: Contact[],
  facing: Facing,
  x: number,
  y: number,
  walls: readonly SpaceWall[],
): void {
  const angle = Math.atan2(facing.apartY + y, facing.apartX + x) - facing.toothB;
  for (const wall of walls) addTip(contacts, facing, x, y, standing(wall, facing, angle));
}

/** Adds the contact of a point of a tip, from the axis of A, with a place that any play may reach. */
export function addTip(contacts: Contact[], facing: Facing, x: number, y: number, mate: Mate): void {
  const gap = distanceTo(mate, facing.apartX + x, facing.apartY + y);
  // Below 0 the corner stands in another tooth space and sees this wall through its tooth; so may one past the tip.
  if (!(gap >= 0 && gap < facing.reach) || isBeyondTip(mate, facing.apartX + x, facing.apartY + y)) return;
  const place: TipPlace = { facing, mate, x, y };
  const { between, z } = facing;
  contacts.push({ between, feature: 'tips', z, smooth: mate.wall === null, place, read: readTip });
}

/** How far from its mate a tip is looked at, mm. */
export function reachOf({ gap }: LooseFrame, module: number): number {
  return REACH_GAPS * gap + module / 2;
}

/** The walls that tips of other gears meet on a gear. */
export function wallsOf(set: LooseFrame, gear: LooseGear): readonly SpaceWall[] {
  return toothWalls(gear.profile, CHORD_SHARE * set.gap);
}

/** Half the angle of the tip land, wider where a bevel has cut it, radians. */
export function tipHalfAngle(set: LooseFrame, gear: LooseGear, slice: Slice): number {
  const flank = gear.profile.segments[2];
  if (flank.kind !== 'involute') return 0;
  const roll = Math.sqrt(Math.max(0, (tipRadiusAt(set, gear, slice) / flank.baseRadius) ** 2 - 1));
  return Math.abs(flank.start + flank.turn * (roll - Math.atan(roll)));
}

function rootCircle({ profile }: LooseGear): RootCircle {
  return { wall: null, sign: profile.gear.internal ? -1 : 1, radius: profile.rootRadius };
}

/** One side of that tooth of the mate which is nearest to a corner as the set stands. @param angle from the mate's tooth */
function standing(wall: SpaceWall, { toothB, pitchB }: Facing, angle: number): StandingWall {
  const middle = 2 * Math.floor(wall.points.length / 4);
  const own = Math.atan2(wall.points[middle + 1], wall.points[middle]);
  const turn = toothB + pitchB * Math.round((angle - own) / pitchB);
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
    return mate.sign * (radius - mate.radius);
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

/** A tip, from its own axis, and what it may meet. mm. */
interface TipPlace {
  facing: Facing;
  mate: Mate;
  x: number;
  y: number;
}

/** Room for a normal while a gap is read. */
const NORMAL = new Float64Array(2);

/**
 * The tip at (x, y) from the axis of one gear against its mate; exact in the plane. A tip that rises shows in the
 * slice the one below it, so that screwing along its own helix leaves it where it is; so does the mate.
 */
function readTip(
  { facing, mate, x, y }: TipPlace,
  motions: Float64Array,
  a: number,
  b: number,
  slopes?: Float64Array,
): number {
  const { height, twistA, twistB } = facing;
  const atX = facing.apartX + x;
  const atY = facing.apartY + y;
  const turnA = turnAt(motions, a, twistA, x, y);
  const turnB = turnAt(motions, b, twistB, atX, atY);
  const straightX = atX + motions[a] - motions[b] + (motions[a + 4] - motions[b + 4]) * height - turnA * y;
  const straightY =
    atY + motions[a + 1] - motions[b + 1] - (motions[a + 3] - motions[b + 3]) * height + turnA * x;
  // Leaning parts show longer outlines.
  const dx = straightX + stretch(motions, a, x, y, 1, 0) - stretch(motions, b, atX, atY, 1, 0);
  const dy = straightY + stretch(motions, a, x, y, 0, 1) - stretch(motions, b, atX, atY, 0, 1);
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
  addStretchSlopes(slopes, 0, motions, a, x, y, nx, ny, 1);
  addStretchSlopes(slopes, 6, motions, b, atX, atY, nx, ny, -1);
  return gap;
}

/** Where the tip circles of two planets would touch in one slice; a little early when no two tips face each other. */
export function neighbourContact(
  set: LooseFrame,
  first: LooseGear,
  second: LooseGear,
  slice: Slice,
): Contact {
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

import type { Contact, ReadGap } from './contact.js';
import { type LooseGear, type LooseSet, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { turnAt, writeSliceSlopes } from './sliceMotion.js';
import { isPastTip, type SpaceWall, toothWalls, wallDistance } from './spaceWall.js';

/** Teeth to each side of the line of centres whose tips are looked at. */
const BESIDE = 1;
/** Tips farther than this many gaps and half modules from their mate are left out: no play reaches that far. */
const REACH_GAPS = 3;
/** Lines of a wall stay this share of the gap from the curve. */
const CHORD_SHARE = 0.01;

/** A place of the mate that a tip may meet, its distances in the mate's own place. */
interface Place {
  /** How far a point is from it, mm. @param normal takes x and y of the way that leads away [not worked out] */
  distance(x: number, y: number, normal?: Float64Array): number;
  /** True where the point stands over or behind a tip of the mate. */
  isPastTip(x: number, y: number): boolean;
}

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
    for (const corner of [centre - half, centre + half])
      for (const wall of walls) {
        const place = toWall(set, roots, wall, slice, tips, radius, corner);
        addWithin(contacts, set, tips, roots, slice, radius, corner, place, false);
      }
  }
  return contacts;
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
  place: Place,
  smooth: boolean,
): void {
  const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
  const [atX, atY] = [tips.centre[0] + x - roots.centre[0], tips.centre[1] + y - roots.centre[1]];
  const reach = REACH_GAPS * set.gap + tips.profile.gear.module / 2;
  const gap = place.distance(atX, atY);
  // Below 0 the corner stands in another tooth space and sees this wall through its tooth; so may one past the tip.
  if (gap >= 0 && gap < reach && !place.isPastTip(atX, atY))
    contacts.push(tipContact(set, tips, roots, slice, x, y, place, smooth));
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

function toRootCircle({ profile }: LooseGear): Place {
  const sign = profile.gear.internal ? -1 : 1;
  return {
    distance(x, y, normal) {
      const radius = Math.sqrt(x * x + y * y);
      if (normal) {
        normal[0] = (sign * x) / radius;
        normal[1] = (sign * y) / radius;
      }
      return sign * (radius - profile.rootRadius);
    },
    isPastTip: () => false,
  };
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
): Place {
  const pitch = (2 * Math.PI) / roots.profile.gear.teeth;
  const tooth = rotationAt(set, roots, slice);
  const middle = Math.floor(wall.points.length / 4);
  const wallAngle = Math.atan2(wall.points[2 * middle + 1], wall.points[2 * middle]);
  const x = tips.centre[0] + radius * Math.cos(corner) - roots.centre[0];
  const y = tips.centre[1] + radius * Math.sin(corner) - roots.centre[1];
  const turn = tooth + pitch * Math.round((Math.atan2(y, x) - tooth - wallAngle) / pitch);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return {
    distance(px, py, normal) {
      const distance = wallDistance(wall, px * cos + py * sin, py * cos - px * sin, normal);
      if (normal) turnBy(normal, cos, sin);
      return distance;
    },
    isPastTip: (px, py) => isPastTip(wall, px * cos + py * sin, py * cos - px * sin),
  };
}

function turnBy(vector: Float64Array, cos: number, sin: number): void {
  const [x, y] = vector;
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
  place: Place,
  smooth: boolean,
): Contact {
  const height = slice.z - set.faceWidth / 2;
  const atX = tips.centre[0] + x - roots.centre[0];
  const atY = tips.centre[1] + y - roots.centre[1];
  const twistA = twistAt(set, tips, slice);
  const twistB = twistAt(set, roots, slice);
  const normal = new Float64Array(2);
  const read: ReadGap = (motions, a, b, slopes) => {
    const turnA = turnAt(motions, a, twistA, x, y);
    const turnB = turnAt(motions, b, twistB, atX, atY);
    const dx = atX + motions[a] - motions[b] + (motions[a + 4] - motions[b + 4]) * height - turnA * y;
    const dy = atY + motions[a + 1] - motions[b + 1] - (motions[a + 3] - motions[b + 3]) * height + turnA * x;
    // Seen from the mate, which has turned on itself.
    const [cos, sin] = [Math.cos(turnB), Math.sin(turnB)];
    const [seenX, seenY] = [dx * cos + dy * sin, dy * cos - dx * sin];
    if (!slopes) return place.distance(seenX, seenY);
    const gap = place.distance(seenX, seenY, normal);
    turnBy(normal, cos, sin);
    const [nx, ny] = normal;
    writeSliceSlopes(slopes, 0, nx, ny, ny * x - nx * y, twistA, height, x, y);
    writeSliceSlopes(slopes, 6, -nx, -ny, nx * dy - ny * dx, twistB, height, atX, atY);
    return gap;
  };
  return { between: [tips.name, roots.name], feature: 'tips', z: slice.z, smooth, read };
}

/** Where the tip circles of two planets would touch in one slice; a little early when no two tips face each other. */
export function neighbourContact(set: LooseSet, first: LooseGear, second: LooseGear, slice: Slice): Contact {
  const height = slice.z - set.faceWidth / 2;
  const reach = tipRadiusAt(set, first, slice) + tipRadiusAt(set, second, slice);
  const apartX = second.centre[0] - first.centre[0];
  const apartY = second.centre[1] - first.centre[1];
  const read: ReadGap = (motions, a, b, slopes) => {
    const dx = apartX + motions[b] - motions[a] + (motions[b + 4] - motions[a + 4]) * height;
    const dy = apartY + motions[b + 1] - motions[a + 1] - (motions[b + 3] - motions[a + 3]) * height;
    const distance = Math.sqrt(dx * dx + dy * dy);
    if (slopes) {
      writeSliceSlopes(slopes, 0, -dx / distance, -dy / distance, 0, 0, height, 0, 0);
      writeSliceSlopes(slopes, 6, dx / distance, dy / distance, 0, 0, height, 0, 0);
    }
    return distance - reach;
  };
  return { between: [first.name, second.name], feature: 'neighbours', z: slice.z, smooth: true, read };
}

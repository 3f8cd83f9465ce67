import type { Contact, Motion, Reading } from './contact.js';
import { type LooseGear, type LooseSet, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { type SpaceWall, toothWalls, wallDistance } from './spaceWall.js';

/** Teeth to each side of the line of centres whose tips are looked at. */
const BESIDE = 1;
/** Tips farther than this many gaps and half modules from their mate are left out: no play reaches that far. */
const REACH_GAPS = 3;
/** Lines of a wall stay this share of the gap from the curve. */
const CHORD_SHARE = 0.01;

/** How far a point of one gear is from the other gear, in the other's place: mm, and the way that leads away. */
type Away = (
  x: number,
  y: number,
) => { distance: number; normalX: number; normalY: number; pastTip: boolean };

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
  const add = (angle: number, away: Away, smooth: boolean) => {
    const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    const contact = tipContact(set, tips, roots, slice, x, y, away, smooth);
    const reach = REACH_GAPS * set.gap + gear.module / 2;
    const { gap } = contact.read(STILL, STILL);
    const { pastTip } = away(tips.centre[0] + x - roots.centre[0], tips.centre[1] + y - roots.centre[1]);
    // Below 0 the corner stands in another tooth space and sees this wall through its tooth; so may one past the tip.
    if (gap >= 0 && gap < reach && !pastTip) contacts.push(contact);
  };
  for (let k = nearest - BESIDE; k <= nearest + BESIDE; k++) {
    const centre = tooth + k * pitch;
    const off = centre - towards;
    add(towards + Math.sign(off) * Math.max(0, Math.abs(off) - half), toRootCircle(roots), true);
    for (const corner of [centre - half, centre + half])
      for (const wall of walls) add(corner, toWall(set, roots, wall, slice, tips, radius, corner), false);
  }
  return contacts;
}

const STILL: Motion = [0, 0, 0, 0, 0, 0];

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

function toRootCircle({ profile }: LooseGear): Away {
  const sign = profile.gear.internal ? -1 : 1;
  return (x, y) => {
    const radius = Math.hypot(x, y);
    return {
      distance: sign * (radius - profile.rootRadius),
      normalX: (sign * x) / radius,
      normalY: (sign * y) / radius,
      pastTip: false,
    };
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
): Away {
  const pitch = (2 * Math.PI) / roots.profile.gear.teeth;
  const tooth = rotationAt(set, roots, slice);
  const middle = Math.floor(wall.points.length / 4);
  const wallAngle = Math.atan2(wall.points[2 * middle + 1], wall.points[2 * middle]);
  const x = tips.centre[0] + radius * Math.cos(corner) - roots.centre[0];
  const y = tips.centre[1] + radius * Math.sin(corner) - roots.centre[1];
  const turn = tooth + pitch * Math.round((Math.atan2(y, x) - tooth - wallAngle) / pitch);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return (px, py) => {
    const { distance, normalX, normalY, pastTip } = wallDistance(
      wall,
      px * cos + py * sin,
      py * cos - px * sin,
    );
    return {
      pastTip,
      distance,
      normalX: normalX * cos - normalY * sin,
      normalY: normalX * sin + normalY * cos,
    };
  };
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
  away: Away,
  smooth: boolean,
): Contact {
  const height = slice.z - set.faceWidth / 2;
  const atX = tips.centre[0] + x - roots.centre[0];
  const atY = tips.centre[1] + y - roots.centre[1];
  const twists = [twistAt(set, tips, slice), twistAt(set, roots, slice)];
  const turnOf = (motion: Motion, twist: number, px: number, py: number) =>
    motion[5] - twist * (motion[2] + motion[3] * py - motion[4] * px);
  const read = (a: Motion, b: Motion): Reading => {
    const turnA = turnOf(a, twists[0], x, y);
    const turnB = turnOf(b, twists[1], atX, atY);
    const dx = atX + a[0] - b[0] + (a[4] - b[4]) * height - turnA * y;
    const dy = atY + a[1] - b[1] - (a[3] - b[3]) * height + turnA * x;
    // Seen from the mate, which has turned on itself.
    const [cos, sin] = [Math.cos(turnB), Math.sin(turnB)];
    const { distance, normalX, normalY } = away(dx * cos + dy * sin, dy * cos - dx * sin);
    const [nx, ny] = [normalX * cos - normalY * sin, normalX * sin + normalY * cos];
    return {
      gap: distance,
      slopes: [
        slopes(nx, ny, ny * x - nx * y, twists[0], height, x, y),
        slopes(-nx, -ny, nx * dy - ny * dx, twists[1], height, atX, atY),
      ],
    };
  };
  return { between: [tips.name, roots.name], feature: 'tips', z: slice.z, smooth, read };
}

/** Slopes for one part from those for its shift in the slice and its turn. */
function slopes(
  nx: number,
  ny: number,
  perTurn: number,
  twist: number,
  height: number,
  x: number,
  y: number,
): Motion {
  const perRise = -twist * perTurn;
  return [nx, ny, perRise, -ny * height + perRise * y, nx * height - perRise * x, perTurn];
}

/** Where the tip circles of two planets would touch in one slice; a little early when no two tips face each other. */
export function neighbourContact(set: LooseSet, first: LooseGear, second: LooseGear, slice: Slice): Contact {
  const height = slice.z - set.faceWidth / 2;
  const reach = tipRadiusAt(set, first, slice) + tipRadiusAt(set, second, slice);
  const apartX = second.centre[0] - first.centre[0];
  const apartY = second.centre[1] - first.centre[1];
  const read = (a: Motion, b: Motion): Reading => {
    const dx = apartX + b[0] - a[0] + (b[4] - a[4]) * height;
    const dy = apartY + b[1] - a[1] - (b[3] - a[3]) * height;
    const distance = Math.hypot(dx, dy);
    const [x, y] = [dx / distance, dy / distance];
    return {
      gap: distance - reach,
      slopes: [slopes(-x, -y, 0, 0, height, 0, 0), slopes(x, y, 0, 0, height, 0, 0)],
    };
  };
  return { between: [first.name, second.name], feature: 'neighbours', z: slice.z, smooth: true, read };
}

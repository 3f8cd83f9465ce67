import { enclosingCircle } from './enclosingCircle.js';
import { type Pose, smallPartsCylinder } from './smallPartsCylinder.js';

/** A pose with the place of the cylinder's axis and the margin there, mm. */
export interface Placed {
  pose: Pose;
  cx: number;
  cy: number;
  margin: number;
}

/** Directions tried for the axis, each of them both ways: about 7° from one to the next. */
const AXES = 400;
/** Turns tried about each axis. */
const TURNS = 16;
/** Every direction lies within this angle of a tried one or its opposite, radians: 0.104 measured. */
const FROM_AXIS = 0.11;
/** Poses kept for refining. */
const KEPT = 12;

/**
 * The most promising poses of a dense set, best first; empty when the set shows that no pose at all holds the
 * points, since turning by an angle moves no point farther than that angle times its distance from the middle.
 * @param points about their middle, x, y, z of point i at 3i, mm
 */
export function likelyPoses(points: Float64Array): Placed[] {
  const { radius, depthOnAxis } = smallPartsCylinder;
  const reach = reachOf(points);
  const flat = new Float64Array((2 * points.length) / 3);
  const heights = new Float64Array(points.length / 3);
  const kept: Placed[] = [];
  for (const axis of directions(AXES)) {
    const frame = frameAround(axis);
    project(points, frame, flat, heights);
    const circle = enclosingCircle(flat);
    const wall = radius - circle.radius;
    if (wall + reach * FROM_AXIS < 0) continue;
    for (const up of [1, -1]) {
      const top = greatest(heights, up);
      for (let turn = 0; turn < TURNS; turn++) {
        const angle = (2 * Math.PI * turn) / TURNS;
        const cos = Math.cos(angle);
        const sin = Math.sin(angle);
        const cx = circle.x * cos + circle.y * sin;
        const depth = depthOnAxis - top + lowestOnFloor(flat, heights, cos, sin, up) - cx;
        // Moving the axis away from the deep side gains depth as fast as it loses wall, at worst.
        const aside = Math.max(0, (wall - depth) / 2);
        const margin = wall - aside;
        if (kept.length === KEPT && margin <= kept[KEPT - 1].margin) continue;
        const cy = up * (circle.y * cos - circle.x * sin);
        keep(kept, { pose: turned(frame, cos, sin, up), cx: cx - aside, cy, margin });
      }
    }
  }
  return kept;
}

/** Coordinates of the points along the rows of a frame: two in the plane, one as height. */
function project(points: Float64Array, frame: Pose, flat: Float64Array, heights: Float64Array): void {
  for (let i = 0, j = 0; j < heights.length; i += 3, j++) {
    const x = points[i];
    const y = points[i + 1];
    const z = points[i + 2];
    flat[2 * j] = frame[0] * x + frame[1] * y + frame[2] * z;
    flat[2 * j + 1] = frame[3] * x + frame[4] * y + frame[5] * z;
    heights[j] = frame[6] * x + frame[7] * y + frame[8] * z;
  }
}

function greatest(heights: Float64Array, up: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let j = 0; j < heights.length; j++) if (up * heights[j] > most) most = up * heights[j];
  return most;
}

/** Least height above the floor's plane, of which the deep side lies in the direction (cos, sin). */
function lowestOnFloor(
  flat: Float64Array,
  heights: Float64Array,
  cos: number,
  sin: number,
  up: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let j = 0; j < heights.length; j++) {
    const above = flat[2 * j] * cos + flat[2 * j + 1] * sin + up * heights[j];
    if (above < least) least = above;
  }
  return least;
}

function keep(kept: Placed[], placed: Placed): void {
  let at = kept.length;
  while (at > 0 && kept[at - 1].margin < placed.margin) at--;
  kept.splice(at, 0, placed);
  if (kept.length > KEPT) kept.pop();
}

function reachOf(points: Float64Array): number {
  let most = 0;
  for (let i = 0; i < points.length; i += 3)
    most = Math.max(most, Math.hypot(points[i], points[i + 1], points[i + 2]));
  return most;
}

/**
 * Directions spread evenly over the upper half of the sphere.
 * Source: Fibonacci lattice, common practice.
 */
export function directions(count: number): [number, number, number][] {
  const golden = Math.PI * (3 - Math.sqrt(5));
  return Array.from({ length: count }, (_, i) => {
    const z = 1 - (i + 0.5) / count;
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(golden * i), r * Math.sin(golden * i), z];
  });
}

/** Three unit rows, right-handed, the third one along `axis`. */
function frameAround([x, y, z]: readonly [number, number, number]): Pose {
  // Square to the axis, from whichever coordinate axis is farther from it.
  const [a, b, c] = Math.abs(x) < 0.6 ? [0, z, -y] : [-z, 0, x];
  const length = Math.hypot(a, b, c);
  const u = a / length;
  const v = b / length;
  const w = c / length;
  return Float64Array.of(u, v, w, y * w - z * v, z * u - x * w, x * v - y * u, x, y, z);
}

/** The frame turned about its third row by an angle given by its cosine and sine; `up` −1 then puts it upside down. */
function turned(frame: Pose, cos: number, sin: number, up: number): Pose {
  const pose = new Float64Array(9);
  for (let k = 0; k < 3; k++) {
    pose[k] = frame[k] * cos + frame[3 + k] * sin;
    pose[3 + k] = up * (frame[3 + k] * cos - frame[k] * sin);
    pose[6 + k] = up * frame[6 + k];
  }
  return pose;
}

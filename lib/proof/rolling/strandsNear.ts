import { type GearOutline, gearOutline } from '../../tooth/outline.js';
import type { ToothProfile } from '../../tooth/profile.js';
import { chunkBoxes, type Strand } from './outlineDistance.js';

/** One segment of one tooth on an outline: the lines from `from` up to, not including, `to`. */
interface Run {
  from: number;
  to: number;
  segment: number;
  shortening: Float64Array;
  leastShortening: number;
  /** A circle around its points, mm. */
  x: number;
  y: number;
  radius: number;
}

/** A gear's outline cut into runs of one segment of one tooth each. */
export interface PreparedOutline {
  /** x, y of point i at 2i, mm. */
  points: Float64Array;
  runs: Run[];
}

/** Where strands are looked for: within a circle, beyond one, or below a height, mm. */
export type Zone =
  | { kind: 'within' | 'beyond'; x: number; y: number; radius: number }
  | { kind: 'below'; y: number };

/** Distance from a zone to a point, mm; below 0 within. No point is nearer or farther by more than what it is moved by. */
function distanceTo(zone: Zone, x: number, y: number): number {
  if (zone.kind === 'below') return y - zone.y;
  const dx = x - zone.x;
  const dy = y - zone.y;
  const off = Math.sqrt(dx * dx + dy * dy) - zone.radius;
  return zone.kind === 'within' ? off : -off;
}

/**
 * The outline with its shortening (see `Strand`). A surface swept along a helix that turns by k per mm has
 * the normal (n, −k r×n) at the point r whose outline normal is n.
 * @param sagitta largest distance of a chord from the curve, mm
 */
export function preparedOutline(profile: ToothProfile, sagitta: number): PreparedOutline {
  const outline = gearOutline(profile, sagitta);
  const turn = Math.tan(profile.sizes.helixAngle) / profile.sizes.referenceRadius;
  const count = outline.segments.length;
  const shortening = new Float64Array(count);
  const { points } = outline;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const dx = points[2 * j] - points[2 * i];
    const dy = points[2 * j + 1] - points[2 * i + 1];
    const x = (points[2 * i] + points[2 * j]) / 2;
    const y = (points[2 * i + 1] + points[2 * j + 1]) / 2;
    const lever = (x * dx + y * dy) / Math.sqrt(dx * dx + dy * dy);
    shortening[i] = 1 / Math.sqrt(1 + (turn * lever) ** 2);
  }
  return cutIntoRuns(outline, shortening);
}

/** @param shortening one figure a line, see `Strand` */
export function cutIntoRuns({ points, segments }: GearOutline, shortening: Float64Array): PreparedOutline {
  const count = segments.length;
  const runs: Run[] = [];
  for (let from = 0; from < count; ) {
    let to = from + 1;
    while (to < count && segments[to] === segments[from]) to++;
    const own = shortening.subarray(from, to);
    let leastShortening = Number.POSITIVE_INFINITY;
    for (const share of own) leastShortening = Math.min(leastShortening, share);
    const { x, y, radius } = circleAround(points, from, to);
    runs.push({ from, to, segment: segments[from], shortening: own, leastShortening, x, y, radius });
    from = to;
  }
  return { points, runs };
}

/** A circle around points `from` … `to` of an outline, which is closed; about the middle of their first and last. */
function circleAround(
  points: Float64Array,
  from: number,
  to: number,
): { x: number; y: number; radius: number } {
  const end = (2 * to) % points.length;
  const x = (points[2 * from] + points[end]) / 2;
  const y = (points[2 * from + 1] + points[end + 1]) / 2;
  let square = 0;
  for (let i = from; i <= to; i++) {
    const at = (2 * i) % points.length;
    square = Math.max(square, (points[at] - x) ** 2 + (points[at + 1] - y) ** 2);
  }
  return { x, y, radius: Math.sqrt(square) };
}

/** Rounding of a circle's radius that must not pass over a point on it, mm. */
const ROUNDING = 1e-9;

/**
 * The runs of an outline that have a point within a zone, placed.
 * @param rotation radians; dx, dy mm
 */
export function strandsNear(
  { points, runs }: PreparedOutline,
  rotation: number,
  dx: number,
  dy: number,
  zone: Zone,
): Strand[] {
  const cos = Math.cos(rotation);
  const sin = Math.sin(rotation);
  const strands: Strand[] = [];
  for (const run of runs) {
    const x = run.x * cos - run.y * sin + dx;
    const y = run.x * sin + run.y * cos + dy;
    if (distanceTo(zone, x, y) > run.radius + ROUNDING) continue;
    const { from, to, segment, shortening, leastShortening, radius } = run;
    const placed = new Float64Array(2 * (to - from + 1));
    let within = false;
    for (let i = from; i <= to; i++) {
      const at = (2 * i) % points.length;
      const px = points[at] * cos - points[at + 1] * sin + dx;
      const py = points[at] * sin + points[at + 1] * cos + dy;
      placed[2 * (i - from)] = px;
      placed[2 * (i - from) + 1] = py;
      within ||= distanceTo(zone, px, py) < 0;
    }
    if (!within) continue;
    strands.push({
      points: placed,
      segment,
      shortening,
      leastShortening,
      boxes: chunkBoxes(placed),
      x,
      y,
      radius,
    });
  }
  return strands;
}

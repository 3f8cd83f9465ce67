import type { ToothProfile } from '../../tooth/profile.js';
import { sampleSegment } from '../../tooth/sample.js';
import { pointOn } from '../../tooth/segments.js';

/**
 * One side of a tooth, root curve and flank, as a polyline in the gear's own frame, the tooth centred on +x. mm.
 * The empty side of every line is to its right where `empty` is 1, to its left where it is −1.
 */
export interface SpaceWall {
  /** x, y of point i at 2i. */
  points: Float64Array;
  empty: 1 | -1;
  /** True when the wall runs from tip to root. */
  tipFirst: boolean;
  /** Depths beyond this, mm, are no overlap: the point lies behind the tooth, in another space. */
  deepest: number;
}

/** Both sides of a tooth. @param sagitta largest distance of a line from the curve, mm, > 0 */
export function toothWalls({ segments, gear }: ToothProfile, sagitta: number): [SpaceWall, SpaceWall] {
  const wall = (numbers: readonly number[]): SpaceWall => {
    const points = numbers.flatMap((number, at) =>
      sampleSegment(segments[number], sagitta)
        .slice(at)
        .flatMap((t) => pointOn(segments[number], t)),
    );
    return {
      points: Float64Array.from(points),
      empty: gear.internal ? -1 : 1,
      tipFirst: numbers[0] === 4,
      deepest: gear.module / 4,
    };
  };
  return [wall([1, 2]), wall([4, 5])];
}

/**
 * Distance from a point to a wall, mm, negative inside the tooth; the sign is that of the nearest line, and + past the
 * ends.
 * @param normal takes x and y of the way that leads away from the wall [not worked out]
 */
export function wallDistance(wall: SpaceWall, x: number, y: number, normal?: Float64Array): number {
  const { points, empty, deepest } = wall;
  const i = nearestLine(points, x, y);
  const ux = points[i + 2] - points[i];
  const uy = points[i + 3] - points[i + 1];
  const t = along(points, i, x, y);
  const dx = x - points[i] - t * ux;
  const dy = y - points[i + 1] - t * uy;
  const square = dx * dx + dy * dy;
  // Past an end of the wall there is no tooth: the land begins there, which is another contact's business.
  const outside = pastEnd(points, i, t) !== 0 || front(points, i, t, dx, dy) * empty >= 0;
  const side = outside || square > deepest * deepest ? 1 : -1;
  if (normal) {
    // On the wall itself the way away is across the line.
    const on = square <= 1e-18;
    const awayX = on ? (outside ? 1 : -1) * empty * uy : dx;
    const awayY = on ? (outside ? -1 : 1) * empty * ux : dy;
    const scale = side / Math.sqrt(awayX * awayX + awayY * awayY);
    normal[0] = awayX * scale;
    normal[1] = awayY * scale;
  }
  return side * Math.sqrt(square);
}

/** True when a wall's end at the tip is what is nearest to a point: the point stands over or behind the tip. */
export function isPastTip({ points, tipFirst }: SpaceWall, x: number, y: number): boolean {
  const i = nearestLine(points, x, y);
  return pastEnd(points, i, along(points, i, x, y)) === (tipFirst ? -1 : 1);
}

/** −1 before the first point of a wall, 1 after its last, 0 beside it. @param t share of line i that is nearest */
function pastEnd(points: Float64Array, i: number, t: number): -1 | 0 | 1 {
  if (t === 0 && i === 0) return -1;
  return t === 1 && i + 4 === points.length ? 1 : 0;
}

/** Offset into `points` of the line nearest to a point; this is the hot path. */
function nearestLine(points: Float64Array, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  let nearest = 0;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const t = along(points, i, x, y);
    const dx = x - points[i] - t * (points[i + 2] - points[i]);
    const dy = y - points[i + 1] - t * (points[i + 3] - points[i + 1]);
    const square = dx * dx + dy * dy;
    if (square < least) {
      least = square;
      nearest = i;
    }
  }
  return nearest;
}

/** Share of line i at which it is nearest to a point; 0 for a line of no length. */
function along(points: Float64Array, i: number, x: number, y: number): number {
  const ux = points[i + 2] - points[i];
  const uy = points[i + 3] - points[i + 1];
  const length = ux * ux + uy * uy;
  if (length === 0) return 0;
  const t = ((x - points[i]) * ux + (y - points[i + 1]) * uy) / length;
  return Math.min(1, Math.max(0, t));
}

/**
 * Positive where (dx, dy), from the nearest point of line i, points to the right. At a corner both lines have a say:
 * either alone would be wrong behind a sharp one, such as undercut leaves.
 */
function front(points: Float64Array, i: number, t: number, dx: number, dy: number): number {
  const own = rightOf(points, i, dx, dy);
  if (t > 0 && t < 1) return own;
  return own + rightOf(points, t === 0 ? i - 2 : i + 2, dx, dy);
}

function rightOf(points: Float64Array, i: number, dx: number, dy: number): number {
  const ux = points[i + 2] - points[i];
  const uy = points[i + 3] - points[i + 1];
  const length = Math.sqrt(ux * ux + uy * uy);
  return length === 0 ? 0 : (uy * dx - ux * dy) / length;
}

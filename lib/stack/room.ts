import type { Contour, Point } from './contour.js';

/** Two contours of one face that come too near each other. */
export interface TooNear {
  /** Which hole, as an index. */
  hole: number;
  /** The other hole, or `outer` for the edge of the face. */
  other: number | 'outer';
  /** Width of the wall between them, mm; below 0 where they overlap or the hole leaves the face. */
  room: number;
}

/**
 * Which holes of a face leave too little wall: every hole must lie inside the outer contour and outside of all others.
 * @param least width that every wall must have, mm
 * @returns what is too near, in the order of the holes; empty when there is room for all
 */
export function roomProblems(outer: Contour, holes: readonly Contour[], least: number): TooNear[] {
  const found: TooNear[] = [];
  holes.forEach(({ points }, hole) => {
    const edge = distanceBetween(points, outer.points, least);
    const toEdge = points.every((point) => contains(outer.points, point)) ? edge : -edge;
    if (toEdge < least) found.push({ hole, other: 'outer', room: toEdge });
    for (let other = 0; other < hole; other++) {
      const mate = holes[other].points;
      const apart = distanceBetween(points, mate, least);
      const room = contains(mate, points[0]) || contains(points, mate[0]) ? -apart : apart;
      if (room < least) found.push({ hole, other, room });
    }
  });
  return found;
}

/** Whether a point lies within a closed polyline; points on it may count either way. */
export function contains(points: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [ax, ay] = points[j];
    const [bx, by] = points[i];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

/** Least distance between two closed polylines, mm; 0 where they cross, and no more than `most`. */
export function distanceBetween(a: readonly Point[], b: readonly Point[], most: number): number {
  let least = most;
  for (let i = 0; i < a.length && least > 0; i++) {
    const p = a[i];
    const q = a[(i + 1) % a.length];
    for (let j = 0; j < b.length; j++) {
      const r = b[j];
      const s = b[(j + 1) % b.length];
      if (
        Math.min(r[0], s[0]) - Math.max(p[0], q[0]) >= least ||
        Math.min(p[0], q[0]) - Math.max(r[0], s[0]) >= least ||
        Math.min(r[1], s[1]) - Math.max(p[1], q[1]) >= least ||
        Math.min(p[1], q[1]) - Math.max(r[1], s[1]) >= least
      )
        continue;
      least = Math.min(least, segmentDistance(p, q, r, s));
    }
  }
  return least;
}

function segmentDistance(p: Point, q: Point, r: Point, s: Point): number {
  const side = (a: Point, b: Point, c: Point) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) return 0;
  return Math.min(toSegment(p, r, s), toSegment(q, r, s), toSegment(r, p, q), toSegment(s, p, q));
}

function toSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  const t = length > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

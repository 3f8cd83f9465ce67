import type { Loop, PlanePoint } from './section.js';

/** Where two bodies come nearest in a plane, mm. */
export interface Closest {
  one: PlanePoint;
  other: PlanePoint;
  distance: number;
}

/** Places within this share of the least distance count as equally near. */
const EQUAL = 0.03;

/**
 * The place where two sets of outlines come nearest to each other; of places equally near, the one nearest to a point.
 * @returns null when either has no outline there
 */
export function closestPlace(
  ones: readonly Loop[],
  others: readonly Loop[],
  wanted: PlanePoint,
): Closest | null {
  const found = approaches(ones, others);
  for (const { one, other, distance } of approaches(others, ones))
    found.push({ one: other, other: one, distance });
  if (found.length === 0) return null;
  let least = Number.POSITIVE_INFINITY;
  for (const { distance } of found) least = Math.min(least, distance);
  let best: Closest | null = null;
  for (const next of found)
    if (next.distance <= (1 + EQUAL) * least && (!best || away(next, wanted) < away(best, wanted)))
      best = next;
  return best;
}

function away({ one, other }: Closest, wanted: PlanePoint): number {
  return Math.hypot((one[0] + other[0]) / 2 - wanted[0], (one[1] + other[1]) / 2 - wanted[1]);
}

/** Corners farther from the other's box than this share of its size are left out. */
const ROOM = 0.5;

/** For every corner of one that is near the other: the nearest point of the other. */
function approaches(ones: readonly Loop[], others: readonly Loop[]): Closest[] {
  const reach = boxOf(others);
  const room = ROOM * Math.hypot(reach[2] - reach[0], reach[3] - reach[1]);
  const found: Closest[] = [];
  for (const loop of ones)
    for (const corner of loop) {
      const x = corner[0];
      const y = corner[1];
      if (x > reach[0] - room && x < reach[2] + room && y > reach[1] - room && y < reach[3] + room)
        found.push(nearestOn(others, corner));
    }
  return found;
}

/** The point of outlines that is nearest to another one. */
function nearestOn(loops: readonly Loop[], one: PlanePoint): Closest {
  const [x, y] = one;
  let distance = Number.POSITIVE_INFINITY;
  let other = one;
  for (const loop of loops)
    for (let i = 0; i < loop.length; i++) {
      const a = loop[i];
      const b = loop[i + 1 < loop.length ? i + 1 : 0];
      // Sides that are farther off in x or y alone need no closer look.
      if (Math.min(a[0], b[0]) - x > distance || x - Math.max(a[0], b[0]) > distance) continue;
      if (Math.min(a[1], b[1]) - y > distance || y - Math.max(a[1], b[1]) > distance) continue;
      const dx = b[0] - a[0];
      const dy = b[1] - a[1];
      const along = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1);
      const t = Math.min(1, Math.max(0, along));
      const offX = x - a[0] - t * dx;
      const offY = y - a[1] - t * dy;
      const off = Math.sqrt(offX * offX + offY * offY);
      if (off >= distance) continue;
      distance = off;
      other = [a[0] + t * dx, a[1] + t * dy];
    }
  return { one, other, distance };
}

/** Least and greatest x and y of outlines: x, y, x, y. */
export function boxOf(loops: readonly Loop[]): [number, number, number, number] {
  const box: [number, number, number, number] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const loop of loops)
    for (const point of loop) {
      box[0] = Math.min(box[0], point[0]);
      box[1] = Math.min(box[1], point[1]);
      box[2] = Math.max(box[2], point[0]);
      box[3] = Math.max(box[3], point[1]);
    }
  return box;
}

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
  const found = [
    ...approaches(ones, others),
    ...approaches(others, ones).map(({ one, other, distance }) => ({ one: other, other: one, distance })),
  ];
  if (found.length === 0) return null;
  const least = found.reduce((best, { distance }) => Math.min(best, distance), Number.POSITIVE_INFINITY);
  const away = ({ one, other }: Closest): number =>
    Math.hypot((one[0] + other[0]) / 2 - wanted[0], (one[1] + other[1]) / 2 - wanted[1]);
  return found
    .filter(({ distance }) => distance <= (1 + EQUAL) * least)
    .reduce((best, next) => (away(next) < away(best) ? next : best));
}

/** Corners farther from the other's box than this share of its size are left out. */
const ROOM = 0.5;

/** For every corner of one that is near the other: the nearest point of the other. */
function approaches(ones: readonly Loop[], others: readonly Loop[]): Closest[] {
  const [reach, sides] = [boxOf(others), others.flatMap(sidesOf)];
  const room = ROOM * Math.hypot(reach[2] - reach[0], reach[3] - reach[1]);
  const corners = ones
    .flat()
    .filter(
      ([x, y]) => x > reach[0] - room && x < reach[2] + room && y > reach[1] - room && y < reach[3] + room,
    );
  return corners.map((one) => {
    let [distance, at]: [number, PlanePoint] = [Number.POSITIVE_INFINITY, one];
    for (const [[ax, ay], [bx, by]] of sides) {
      // Sides that are farther off in x or y alone need no closer look.
      if (Math.min(ax, bx) - one[0] > distance || one[0] - Math.max(ax, bx) > distance) continue;
      if (Math.min(ay, by) - one[1] > distance || one[1] - Math.max(ay, by) > distance) continue;
      const [dx, dy] = [bx - ax, by - ay];
      const along = ((one[0] - ax) * dx + (one[1] - ay) * dy) / (dx * dx + dy * dy || 1);
      const t = Math.min(1, Math.max(0, along));
      const off = Math.hypot(one[0] - ax - t * dx, one[1] - ay - t * dy);
      if (off < distance) [distance, at] = [off, [ax + t * dx, ay + t * dy]];
    }
    return { one, other: at, distance };
  });
}

function sidesOf(loop: Loop): [PlanePoint, PlanePoint][] {
  return loop.map((point, i) => [point, loop[(i + 1) % loop.length]]);
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
    for (const [x, y] of loop) {
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x);
      box[3] = Math.max(box[3], y);
    }
  return box;
}

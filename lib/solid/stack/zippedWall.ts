import type { Point } from '../../stack/contour.js';

/**
 * Triangles between two contours with different numbers of points, such as a hexagon and a circle: both rims are
 * walked round together, and whichever edge has the smaller middle angle goes first, so that each corner gets a fan
 * to both of its sides.
 * @param below points of the lower contour, and `belowIds` their vertices; both contours star-shaped about the mean
 * of the points that are fewer
 * @returns vertex ids, wound for material inside
 */
export function zippedWall(
  below: readonly Point[],
  above: readonly Point[],
  belowIds: readonly number[],
  aboveIds: readonly number[],
): number[] {
  const centre = meanOf(below.length < above.length ? below : above);
  const low = anglesFrom(below, centre, 0);
  const high = anglesFrom(above, centre, startNear(above, centre, low.angles[0]));
  // Both walks start within half a turn of each other.
  const turn = Math.round((low.angles[0] - high.angles[0]) / (2 * Math.PI)) * 2 * Math.PI;
  const idOf = (ids: readonly number[], start: number, i: number) => ids[(start + i) % ids.length];
  const triangles: number[] = [];
  let i = 0;
  let j = 0;
  while (i < below.length || j < above.length) {
    const a = idOf(belowIds, low.start, i);
    const b = idOf(aboveIds, high.start, j);
    const lowMiddle = i < below.length ? (low.angles[i] + low.angles[i + 1]) / 2 : Infinity;
    const highMiddle = j < above.length ? turn + (high.angles[j] + high.angles[j + 1]) / 2 : Infinity;
    if (lowMiddle <= highMiddle) triangles.push(a, idOf(belowIds, low.start, ++i), b);
    else triangles.push(a, idOf(aboveIds, high.start, ++j), b);
  }
  return triangles;
}

function meanOf(points: readonly Point[]): Point {
  const sum = points.reduce<[number, number]>(([x, y], point) => [x + point[0], y + point[1]], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}

/** Angles of the points about a centre, ascending from the first, the first one again at the end, radians. */
function anglesFrom(points: readonly Point[], [cx, cy]: Point, start: number) {
  const angles: number[] = [];
  for (let i = 0; i <= points.length; i++) {
    const [x, y] = points[(start + i) % points.length];
    let angle = Math.atan2(y - cy, x - cx);
    while (i > 0 && angle <= angles[i - 1]) angle += 2 * Math.PI;
    angles.push(angle);
  }
  return { angles, start };
}

function startNear(points: readonly Point[], [cx, cy]: Point, angle: number): number {
  const off = points.map(([x, y]) => {
    const difference = Math.atan2(y - cy, x - cx) - angle;
    return Math.abs(Math.atan2(Math.sin(difference), Math.cos(difference)));
  });
  return off.indexOf(Math.min(...off));
}

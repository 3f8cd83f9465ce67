/** A circle in a plane, mm. */
export interface Circle {
  x: number;
  y: number;
  radius: number;
}

/** Points this share of the radius outside count as on the circle: rounding of doubles. */
const ROUNDING = 1e-10;

/**
 * The smallest circle around points of a plane. Always the same result for the same points; no allocation a point.
 * @param points x and y of point i at 2i, mm
 * @returns radius −1 for no points
 * Source: E. Welzl, Smallest enclosing disks (1991), in the incremental form of computational geometry textbooks:
 * a point outside the circle so far lies on the next one. Expected linear time holds for shuffled points; the
 * points of a gear come in no special order and are few.
 */
export function enclosingCircle(points: Float64Array): Circle {
  const count = points.length / 2;
  if (count === 0) return { x: 0, y: 0, radius: -1 };
  const circle: Circle = { x: points[0], y: points[1], radius: 0 };
  for (let i = 1; i < count; i++) {
    if (holds(circle, points, i)) continue;
    set(circle, points[2 * i], points[2 * i + 1], 0);
    for (let j = 0; j < i; j++) {
      if (holds(circle, points, j)) continue;
      throughTwo(circle, points, i, j);
      for (let k = 0; k < j; k++) if (!holds(circle, points, k)) throughThree(circle, points, i, j, k);
    }
  }
  return circle;
}

function holds({ x, y, radius }: Circle, points: Float64Array, i: number): boolean {
  const dx = points[2 * i] - x;
  const dy = points[2 * i + 1] - y;
  return dx * dx + dy * dy <= radius * radius * (1 + ROUNDING);
}

function set(circle: Circle, x: number, y: number, radius: number): void {
  circle.x = x;
  circle.y = y;
  circle.radius = radius;
}

function throughTwo(circle: Circle, points: Float64Array, i: number, j: number): void {
  const dx = points[2 * i] - points[2 * j];
  const dy = points[2 * i + 1] - points[2 * j + 1];
  set(circle, points[2 * j] + dx / 2, points[2 * j + 1] + dy / 2, Math.sqrt(dx * dx + dy * dy) / 2);
}

/** Three points in line have no circle: the two farthest apart of them decide. */
function throughThree(circle: Circle, points: Float64Array, i: number, j: number, k: number): void {
  const ox = points[2 * i];
  const oy = points[2 * i + 1];
  const bx = points[2 * j] - ox;
  const by = points[2 * j + 1] - oy;
  const cx = points[2 * k] - ox;
  const cy = points[2 * k + 1] - oy;
  const b = bx * bx + by * by;
  const c = cx * cx + cy * cy;
  const cross = 2 * (bx * cy - by * cx);
  if (Math.abs(cross) <= 1e-14 * (b + c)) {
    const apart = (bx - cx) ** 2 + (by - cy) ** 2;
    if (apart >= b && apart >= c) throughTwo(circle, points, j, k);
    else if (b >= c) throughTwo(circle, points, i, j);
    else throughTwo(circle, points, i, k);
    return;
  }
  const x = (cy * b - by * c) / cross;
  const y = (bx * c - cx * b) / cross;
  set(circle, ox + x, oy + y, Math.sqrt(x * x + y * y));
}

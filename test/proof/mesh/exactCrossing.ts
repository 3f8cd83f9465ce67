import type { Point } from './fixtures.js';

/**
 * Whether two triangles with whole-number corners share more than touching, decided without rounding: in one
 * plane, an area; otherwise, a stretch of the planes' common line inside both. Whole coordinates up to 1000.
 */
export function crossExactly(a: readonly Point[], b: readonly Point[]): boolean {
  const [na, nb] = [normal(a), normal(b)];
  const [ha, hb] = [heights(nb, b[0], a), heights(na, a[0], b)];
  if (hb.every((h) => h === 0)) return overlapInPlane(a, b, na);
  const line = cross(na, nb);
  const p = chord(a, ha, line, a[0]);
  const q = chord(b, hb, line, a[0]);
  return p !== null && q !== null && less(max(p[0], q[0]), min(p[1], q[1]));
}

/** Numerator and positive denominator. */
type Fraction = readonly [bigint, bigint];

const fraction = (n: number | bigint, d: number | bigint): Fraction =>
  BigInt(d) < 0n ? [-BigInt(n), -BigInt(d)] : [BigInt(n), BigInt(d)];
const less = ([n, d]: Fraction, [m, e]: Fraction) => n * e < m * d;
const max = (p: Fraction, q: Fraction) => (less(p, q) ? q : p);
const min = (p: Fraction, q: Fraction) => (less(p, q) ? p : q);

const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Point, q: Point) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (u: Point, v: Point): Point => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];

function normal([a, b, c]: readonly Point[]): Point {
  return cross(minus(b, a), minus(c, a));
}

function heights(n: Point, origin: Point, corners: readonly Point[]): number[] {
  return corners.map((corner) => dot(n, minus(corner, origin)));
}

/** Where the inside of a triangle meets the other plane, as places along a line; null when it only touches. */
function chord(
  corners: readonly Point[],
  h: readonly number[],
  line: Point,
  origin: Point,
): [Fraction, Fraction] | null {
  if (!(Math.min(...h) < 0 && Math.max(...h) > 0)) return null;
  const ends: Fraction[] = [];
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const [s, t] = [corners[i], corners[j]].map((corner) => BigInt(dot(line, minus(corner, origin))));
    if (h[i] === 0) ends.push([s, 1n]);
    const [hi, hj] = [BigInt(h[i]), BigInt(h[j])];
    if (hi * hj < 0n) ends.push(fraction(s * hj - t * hi, hj - hi));
  }
  return [min(ends[0], ends[1]), max(ends[0], ends[1])];
}

/** Separating lines of two triangles in one plane: the direction of every side, by the sign of whole numbers. */
function overlapInPlane(a: readonly Point[], b: readonly Point[], n: Point): boolean {
  for (const triangle of [a, b])
    for (let i = 0; i < 3; i++) {
      const across = cross(n, minus(triangle[(i + 1) % 3], triangle[i])).map(BigInt);
      const shadow = (corners: readonly Point[]) =>
        corners
          .map((corner) => corner.reduce((sum, value, axis) => sum + BigInt(value) * across[axis], 0n))
          .sort((p, q) => (p < q ? -1 : p > q ? 1 : 0));
      const [p, q] = [shadow(a), shadow(b)];
      if (p[2] <= q[0] || q[2] <= p[0]) return false;
    }
  return true;
}

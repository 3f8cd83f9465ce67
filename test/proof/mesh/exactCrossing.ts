import type { Point } from './fixtures.js';

/** A point in whole numbers of any size. */
type Whole = readonly [bigint, bigint, bigint];

/**
 * Whether two triangles with whole-number corners share more than touching, decided without rounding: in one
 * plane, an area; otherwise, a stretch of the planes' common line inside both.
 */
export function crossExactly(first: readonly Point[], second: readonly Point[]): boolean {
  const [a, b] = [first.map(whole), second.map(whole)];
  const [na, nb] = [normal(a), normal(b)];
  const [ha, hb] = [heights(nb, b[0], a), heights(na, a[0], b)];
  if (hb.every((h) => h === 0n)) return overlapInPlane(a, b, na);
  const line = cross(na, nb);
  const p = chord(a, ha, line, a[0]);
  const q = chord(b, hb, line, a[0]);
  return p !== null && q !== null && less(max(p[0], q[0]), min(p[1], q[1]));
}

/** False when the three corners lie on one line. */
export function hasArea(corners: readonly Point[]): boolean {
  return normal(corners.map(whole)).some((value) => value !== 0n);
}

/** Numerator and positive denominator. */
type Fraction = readonly [bigint, bigint];

const less = ([n, d]: Fraction, [m, e]: Fraction) => n * e < m * d;
const max = (p: Fraction, q: Fraction) => (less(p, q) ? q : p);
const min = (p: Fraction, q: Fraction) => (less(p, q) ? p : q);

const whole = ([x, y, z]: Point): Whole => [BigInt(x), BigInt(y), BigInt(z)];
const minus = (p: Whole, q: Whole): Whole => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Whole, q: Whole) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (u: Whole, v: Whole): Whole => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];

function normal([a, b, c]: readonly Whole[]): Whole {
  return cross(minus(b, a), minus(c, a));
}

function heights(n: Whole, origin: Whole, corners: readonly Whole[]): bigint[] {
  return corners.map((corner) => dot(n, minus(corner, origin)));
}

/** Where the inside of a triangle meets the other plane, as places along a line; null when it only touches. */
function chord(
  corners: readonly Whole[],
  h: readonly bigint[],
  line: Whole,
  origin: Whole,
): [Fraction, Fraction] | null {
  if (!(h.some((value) => value < 0n) && h.some((value) => value > 0n))) return null;
  const ends: Fraction[] = [];
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const [s, t] = [corners[i], corners[j]].map((corner) => dot(line, minus(corner, origin)));
    if (h[i] === 0n) ends.push([s, 1n]);
    const [above, below] = h[i] > 0n ? [h[i], -h[j]] : [-h[i], h[j]];
    if (above > 0n && below > 0n) ends.push([s * below + t * above, above + below]);
  }
  return [min(ends[0], ends[1]), max(ends[0], ends[1])];
}

/** Separating lines of two triangles in one plane: square to every side, by the sign of whole numbers. */
function overlapInPlane(a: readonly Whole[], b: readonly Whole[], n: Whole): boolean {
  for (const triangle of [a, b])
    for (let i = 0; i < 3; i++) {
      const across = cross(n, minus(triangle[(i + 1) % 3], triangle[i]));
      const shadow = (corners: readonly Whole[]) =>
        corners.map((corner) => dot(across, corner)).sort((p, q) => (p < q ? -1 : p > q ? 1 : 0));
      const [p, q] = [shadow(a), shadow(b)];
      if (p[2] <= q[0] || q[2] <= p[0]) return false;
    }
  return true;
}

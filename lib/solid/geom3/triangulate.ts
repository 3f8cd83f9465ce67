import type { Loop } from './loops.js';

/** Below this height, relative to its longest side, a triangle counts as having no area. */
const THINNEST = 1e-7;

/**
 * Cuts convex polygons into triangles without dropping a vertex of theirs, collinear ones included: a fan
 * from the corner that leaves the fattest triangles, or, where every fan has a triangle without area, a fan
 * from a new vertex in the middle.
 * @param loops convex polygons, counter-clockwise seen from outside
 * @param positions x, y, z of the vertices, mm; grows by the new vertices
 * @returns vertex indices, three a triangle
 */
export function triangulate(loops: readonly Loop[], positions: number[]): number[] {
  const triangles: number[] = [];
  for (const loop of loops) {
    if (loop.length === 3) triangles.push(loop[0], loop[1], loop[2]);
    else fan(loop, positions, triangles);
  }
  return triangles;
}

function fan(loop: Loop, positions: number[], triangles: number[]): void {
  const normal = normalOf(loop, positions);
  let [best, fattest] = [0, THINNEST];
  for (let apex = 0; apex < loop.length; apex++) {
    const least = leastOfFan(loop, apex, normal, positions);
    if (least > fattest) [best, fattest] = [apex, least];
  }
  if (fattest > THINNEST) {
    for (const [a, b, c] of fanFrom(loop, best)) triangles.push(a, b, c);
    return;
  }
  const middle = positions.length / 3;
  for (let axis = 0; axis < 3; axis++) {
    positions.push(loop.reduce((sum, vertex) => sum + positions[3 * vertex + axis], 0) / loop.length);
  }
  loop.forEach((vertex, i) => {
    triangles.push(vertex, loop[(i + 1) % loop.length], middle);
  });
}

function* fanFrom(loop: Loop, apex: number): Generator<[number, number, number]> {
  const n = loop.length;
  for (let k = 1; k < n - 1; k++) yield [loop[apex], loop[(apex + k) % n], loop[(apex + k + 1) % n]];
}

type Vector = readonly [number, number, number];

/** Least height over longest side of the fan's triangles; negative when one is turned over. */
function leastOfFan(loop: Loop, apex: number, normal: Vector, positions: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b, c] of fanFrom(loop, apex)) {
    const [u, v, w] = [between(a, b, positions), between(a, c, positions), between(b, c, positions)];
    const longest = Math.max(dot(u, u), dot(v, v), dot(w, w));
    least = Math.min(least, dot(cross(u, v), normal) / longest);
  }
  return least;
}

/** Unit normal by Newell's sum, which no collinear corner can spoil. */
function normalOf(loop: Loop, positions: readonly number[]): Vector {
  let sum: Vector = [0, 0, 0];
  for (let i = 1; i < loop.length - 1; i++) {
    const part = cross(between(loop[0], loop[i], positions), between(loop[0], loop[i + 1], positions));
    sum = [sum[0] + part[0], sum[1] + part[1], sum[2] + part[2]];
  }
  const length = Math.hypot(...sum) || 1;
  return [sum[0] / length, sum[1] / length, sum[2] / length];
}

const between = (a: number, b: number, p: readonly number[]): Vector => [
  p[3 * b] - p[3 * a],
  p[3 * b + 1] - p[3 * a + 1],
  p[3 * b + 2] - p[3 * a + 2],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

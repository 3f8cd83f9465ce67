import earcut from 'earcut';
import type { Point } from '../stack/contour.js';
import { flipped } from './stack/flip.js';
import { loopArea } from './stack/loopArea.js';
import { mended } from './stack/mend.js';

/** Triangles flatter than this would vanish in a file's 32-bit numbers, mm. */
const FLATTEST = 1e-6;

/**
 * Directions, radians, from which a face is looked at until it fills: points that line up exactly in one of them do
 * not in the next.
 */
const VIEWS = [0, 0.61, 1.07, 2.3, 0.23, 2.81];

/**
 * Triangles over a plane region, counter-clockwise seen from +z, on the points given and no others, every one of
 * them used: neighbours along the outlines fit edge to edge.
 * @param outlines the outer boundary first, then holes, mm
 * @returns places of points in the row of all outlines' points one after another, three a triangle
 * @throws CrossingOutlines when the outlines cross or touch, so that the region cannot be filled
 */
export function fillOutlines(outlines: readonly (readonly Point[])[]): number[] {
  const positions = new Float64Array(3 * outlines.reduce((sum, { length }) => sum + length, 0));
  let count = 0;
  const loops = outlines.map((points) =>
    points.map((point) => {
      positions[3 * count] = point[0];
      positions[3 * count + 1] = point[1];
      return count++;
    }),
  );
  const plain = cut(loops, positions, 0);
  if (isWhole(plain, loops, positions) && flattest(plain, positions) >= FLATTEST) return plain;
  // The library drops points in line with their neighbours, and clips needles where points nearly line up.
  for (const view of VIEWS) {
    const whole = mended(cut(loops, positions, view), loops, positions);
    if (isWhole(whole, loops, positions)) return flipped(whole, positions);
  }
  throw new CrossingOutlines();
}

/** Outlines of a plane face that leave no region to be filled: a fault of whoever made them. */
export class CrossingOutlines extends Error {
  constructor() {
    super('a plane face cannot be filled: its contours cross or touch');
    this.name = 'CrossingOutlines';
  }
}

/**
 * `fillOutlines` for vertices of a mesh.
 * @param loops the outer boundary first, then holes; each an ordered list of vertex ids
 * @param positions x, y, z of vertex i at 3i, mm
 * @returns vertex ids, three a triangle
 */
export function fillPlane(loops: readonly (readonly number[])[], positions: ArrayLike<number>): number[] {
  const ids = loops.flat();
  const outlines = loops.map((loop) => loop.map((id): Point => [positions[3 * id], positions[3 * id + 1]]));
  return fillOutlines(outlines).map((i) => ids[i]);
}

function cut(loops: readonly (readonly number[])[], positions: Float64Array, view: number): number[] {
  const holes: number[] = [];
  let count = 0;
  for (const loop of loops.slice(0, -1)) {
    count += loop.length;
    holes.push(count);
  }
  const triangles = earcut(seenFrom(positions, view), holes, 3);
  return twiceArea(triangles, positions) > 0 ? triangles : reversed(triangles);
}

function seenFrom(positions: Float64Array, view: number): Float64Array {
  const turned = new Float64Array(positions.length);
  const cos = Math.cos(view);
  const sin = Math.sin(view);
  for (let i = 0; i < positions.length; i += 3) {
    turned[i] = positions[i] * cos - positions[i + 1] * sin;
    turned[i + 1] = positions[i] * sin + positions[i + 1] * cos;
  }
  return turned;
}

/** By Euler's formula n points and h holes make n + 2 h − 2 triangles; and they cover the area of the loops. */
function isWhole(
  triangles: readonly number[],
  loops: readonly (readonly number[])[],
  positions: ArrayLike<number>,
): boolean {
  const points = loops.reduce((sum, loop) => sum + loop.length, 0);
  if (triangles.length / 3 !== points + 2 * (loops.length - 1) - 2) return false;
  const areas = loops.map((loop) => Math.abs(loopArea(loop, positions)));
  const region = 2 * areas[0] - areas.reduce((sum, area) => sum + area, 0);
  let covered = 0;
  for (let i = 0; i < triangles.length; i += 3) covered += Math.abs(twiceAreaAt(triangles, i, positions));
  return Math.abs(covered - region) <= COVER * areas[0];
}

/** Rounding of areas, as a share of the outline's. */
const COVER = 1e-9;

/** Least height over the longest edge of any triangle, mm. */
function flattest(triangles: readonly number[], p: ArrayLike<number>): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i];
    const b = 3 * triangles[i + 1];
    const c = 3 * triangles[i + 2];
    const longest = Math.sqrt(Math.max(squareOf(p, a, b), squareOf(p, b, c), squareOf(p, c, a)));
    least = Math.min(least, Math.abs(twiceAreaAt(triangles, i, p)) / longest);
  }
  return least;
}

function squareOf(p: ArrayLike<number>, a: number, b: number): number {
  const x = p[b] - p[a];
  const y = p[b + 1] - p[a + 1];
  return x * x + y * y;
}

/** The library keeps one winding for all its triangles; which one is seen from the sum of their areas. */
function twiceArea(triangles: readonly number[], positions: ArrayLike<number>): number {
  let twice = 0;
  for (let i = 0; i < triangles.length; i += 3) twice += twiceAreaAt(triangles, i, positions);
  return twice;
}

function twiceAreaAt(triangles: readonly number[], i: number, p: ArrayLike<number>): number {
  const a = 3 * triangles[i];
  const b = 3 * triangles[i + 1];
  const c = 3 * triangles[i + 2];
  return (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[b + 1] - p[a + 1]) * (p[c] - p[a]);
}

/** The same triangles seen from the other side. */
export function reversed(triangles: readonly number[]): number[] {
  const turned: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) turned.push(triangles[i], triangles[i + 2], triangles[i + 1]);
  return turned;
}

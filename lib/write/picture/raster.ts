import type { Part } from '../../solid/mesh.js';
import type { Camera } from './camera.js';
import type { Facets } from './facets.js';

/** What each pixel shows. */
export interface Seen {
  width: number;
  height: number;
  /** Facet nearest to the eye; -1 for none. */
  facet: Int32Array;
  /** Its distance toward the eye from the plane through the origin, mm. */
  depth: Float32Array;
  /** Present where a section was cut: 1 where the pixel looks at the cut face. */
  cut?: Uint8Array;
}

/** Points p with p·normal > offset are taken away. */
export interface CuttingPlane {
  /** Unit length. */
  normal: readonly [number, number, number];
  /** mm. */
  offset: number;
}

/**
 * The nearest facet at the middle of every pixel. Two facets that share an edge share its pixels without gap or
 * overlap, because an edge is walked from its lower end in both. A cut body is hollow to the eye: where the nearest
 * facet left is seen from inside, the pixel looks at the cut face.
 */
export function rasterise(
  parts: readonly Part[],
  facets: Facets,
  camera: Camera,
  size: { width: number; height: number },
  plane?: CuttingPlane,
): Seen {
  const { width, height } = size;
  const seen: Seen = {
    width,
    height,
    facet: new Int32Array(width * height).fill(-1),
    depth: new Float32Array(width * height).fill(Number.NEGATIVE_INFINITY),
    cut: plane && new Uint8Array(width * height),
  };
  const away = plane ? planeOnScreen(plane, camera) : null;
  let at = 0;
  for (const { mesh } of parts) {
    fillFacets(seen, at, mesh.triangles, projected(mesh.positions, camera), facets, camera, away);
    at += mesh.triangles.length / 3;
  }
  if (away) moveToPlane(seen, away);
  return seen;
}

/**
 * Fills the facets of one part that look to the eye, all of them where a section shows insides.
 * @param first number of its first facet
 */
function fillFacets(
  seen: Seen,
  first: number,
  triangles: Uint32Array,
  points: Float64Array,
  { normals }: Facets,
  { toward }: Camera,
  away: ScreenPlane | null,
): void {
  for (let i = 0; i < triangles.length; i += 3) {
    const facet = first + i / 3;
    const n = 3 * facet;
    const facing = normals[n] * toward[0] + normals[n + 1] * toward[1] + normals[n + 2] * toward[2];
    if (facing <= 0 && !away) continue;
    fillFacet(
      seen,
      facet,
      points,
      3 * triangles[i],
      3 * triangles[i + 1],
      3 * triangles[i + 2],
      away,
      facing < 0,
    );
  }
}

/** Puts the corners in the order of height; equal heights leave nothing to walk. */
function fillFacet(
  seen: Seen,
  facet: number,
  points: Float64Array,
  i: number,
  j: number,
  k: number,
  away: ScreenPlane | null,
  isInside: boolean,
): void {
  let a = i;
  let b = j;
  let c = k;
  if (points[b + 1] < points[a + 1]) {
    a = j;
    b = i;
  }
  if (points[c + 1] < points[a + 1]) {
    c = a;
    a = k;
  }
  if (points[c + 1] < points[b + 1]) {
    const upper = b;
    b = c;
    c = upper;
  }
  walk(seen, facet, points, a, b, c, away, isInside);
}

/** Fills the rows between the lowest corner `a` and the highest one `c`. */
function walk(
  seen: Seen,
  facet: number,
  points: Float64Array,
  a: number,
  b: number,
  c: number,
  away: ScreenPlane | null,
  isInside: boolean,
): void {
  const ax = points[a];
  const ay = points[a + 1];
  const bx = points[b];
  const by = points[b + 1];
  const cx = points[c];
  const cy = points[c + 1];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (area === 0) return;
  const toB = points[b + 2] - points[a + 2];
  const toC = points[c + 2] - points[a + 2];
  const slopeX = (toB * (cy - ay) - toC * (by - ay)) / area;
  const slopeY = (toC * (bx - ax) - toB * (cx - ax)) / area;
  const last = Math.min(seen.height - 1, Math.ceil(cy - 0.5) - 1);
  for (let row = Math.max(0, Math.ceil(ay - 0.5)); row <= last; row++) {
    const y = row + 0.5;
    const long = ax + ((y - ay) / (cy - ay)) * (cx - ax);
    const short = y < by ? ax + ((y - ay) / (by - ay)) * (bx - ax) : bx + ((y - by) / (cy - by)) * (cx - bx);
    const from = Math.max(0, Math.ceil(Math.min(long, short) - 0.5));
    const to = Math.min(seen.width - 1, Math.ceil(Math.max(long, short) - 0.5) - 1);
    if (from > to) continue;
    const depth = points[a + 2] + slopeY * (y - ay) + slopeX * (from + 0.5 - ax);
    fillRow(seen, facet, row, from, to, depth, slopeX, away, isInside);
  }
}

/** Fills the pixels of a row that nothing nearer has. @param nearness depth of the first one, mm @param slope mm for a pixel */
function fillRow(
  { width, facet, depth, cut }: Seen,
  number: number,
  row: number,
  from: number,
  to: number,
  nearness: number,
  slope: number,
  away: ScreenPlane | null,
  isInside: boolean,
): void {
  let d = nearness;
  for (let x = from; x <= to; x++, d += slope) {
    const pixel = row * width + x;
    if (d <= depth[pixel]) continue;
    if (away && heightAbove(away, x + 0.5, row + 0.5, d) > 0) continue;
    depth[pixel] = d;
    facet[pixel] = number;
    if (cut) cut[pixel] = isInside ? 1 : 0;
  }
}

/** x and y in pixels and depth in mm of every vertex. */
function projected(positions: Float64Array, { right, up, toward, scale, x, y }: Camera): Float64Array {
  const points = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    points[i] = x + scale * along(positions, i, right);
    points[i + 1] = y - scale * along(positions, i, up);
    points[i + 2] = along(positions, i, toward);
  }
  return points;
}

function along(p: Float64Array, i: number, way: readonly number[]): number {
  return p[i] * way[0] + p[i + 1] * way[1] + p[i + 2] * way[2];
}

const dot = (a: readonly number[], b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** How far a pixel's point lies above a plane, mm: so much for each pixel right and down, and for each mm of depth. */
interface ScreenPlane {
  right: number;
  down: number;
  toward: number;
  at: number;
}

function planeOnScreen(
  { normal, offset }: CuttingPlane,
  { right, up, toward, scale, x, y }: Camera,
): ScreenPlane {
  const perRight = dot(normal, right) / scale;
  const perDown = -dot(normal, up) / scale;
  return {
    right: perRight,
    down: perDown,
    toward: dot(normal, toward),
    at: -perRight * x - perDown * y - offset,
  };
}

function heightAbove({ right, down, toward, at }: ScreenPlane, x: number, y: number, depth: number): number {
  return right * x + down * y + toward * depth + at;
}

/** Pixels that look at the cut face lie in the plane. */
function moveToPlane({ width, depth, cut }: Seen, plane: ScreenPlane): void {
  for (let i = 0; i < depth.length; i++)
    if (cut?.[i])
      depth[i] = -heightAbove(plane, (i % width) + 0.5, Math.floor(i / width) + 0.5, 0) / plane.toward;
}

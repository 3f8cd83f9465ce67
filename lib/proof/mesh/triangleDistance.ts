import { type Facets, NORMAL } from './facets.js';

/**
 * What a search for the nearest points of two bodies has found so far, seven numbers: a point of the first
 * body, a point of the second, and the square of their distance (mm²), which calls only ever lower.
 */
export type Nearest = Float64Array;

/** Where the square of the distance is kept in a `Nearest`. */
export const SQUARE = 6;

/** A search that has found nothing yet and looks only for points nearer than the root of `square` (mm²). */
export function nearest(square: number): Nearest {
  const found = new Float64Array(7);
  found[SQUARE] = square;
  return found;
}

/**
 * Lowers `found` to the nearest points of two facets when they are nearer than what it holds; zero when the
 * facets meet. Exact up to rounding: the least is taken over every pair of an edge with an edge, a corner with
 * an edge and a corner with a face, each from a formula that stays accurate for slivers and near-parallel
 * edges, and the facets meet exactly when this leaves out nothing or an edge of one goes through the other.
 * @param p where the first facet starts in `a`
 * @param q where the second facet starts in `b`
 */
export function lowerToFacets(a: Facets, p: number, b: Facets, q: number, found: Nearest): void {
  const b0 = height(a, p, b, q);
  const b1 = height(a, p, b, q + 3);
  const b2 = height(a, p, b, q + 6);
  if (apart(b0, b1, b2, found[SQUARE])) return;
  const a0 = height(b, q, a, p);
  const a1 = height(b, q, a, p + 3);
  const a2 = height(b, q, a, p + 6);
  if (apart(a0, a1, a2, found[SQUARE])) return;
  if (boxesApart(a, p, b, q, found[SQUARE])) return;
  cornerToFace(b, q, a, p, b0, found, 3);
  cornerToFace(b, q + 3, a, p, b1, found, 3);
  cornerToFace(b, q + 6, a, p, b2, found, 3);
  cornerToFace(a, p, b, q, a0, found, 0);
  cornerToFace(a, p + 3, b, q, a1, found, 0);
  cornerToFace(a, p + 6, b, q, a2, found, 0);
  for (let k = 0, before = 6; k < 9; before = k, k += 3) {
    for (let corner = 0; corner < 9; corner += 3) {
      cornerToEdge(a, p + corner, b, q + before, q + k, found, 0);
      cornerToEdge(b, q + corner, a, p + before, p + k, found, 3);
      const end = corner === 6 ? 0 : corner + 3;
      edgeToEdge(a, p + corner, p + end, b, q + before, q + k, found);
    }
  }
  if (found[SQUARE] > 0 && straddles(b0, b1, b2) && straddles(a0, a1, a2)) {
    for (let k = 0, before = 6; k < 9; before = k, k += 3) {
      pierce(a, p + before, p + k, b, q, found);
      pierce(b, q + before, q + k, a, p, found);
    }
  }
}

/** Signed height of the corner at `c` over the plane of the facet at `f`, mm; 0 when that has no area. */
function height(facets: Facets, f: number, corners: Facets, c: number): number {
  return (
    facets[f + NORMAL] * (corners[c] - facets[f]) +
    facets[f + NORMAL + 1] * (corners[c + 1] - facets[f + 1]) +
    facets[f + NORMAL + 2] * (corners[c + 2] - facets[f + 2])
  );
}

/** True when three heights over a plane lie on one side of it, none nearer than the root of `square`. */
function apart(h0: number, h1: number, h2: number, square: number): boolean {
  const least = Math.min(h0, h1, h2);
  if (least > 0) return least * least >= square;
  const greatest = Math.max(h0, h1, h2);
  return greatest < 0 && greatest * greatest >= square;
}

/** True when the boxes of two facets are not nearer than the root of `square`. */
function boxesApart(a: Facets, p: number, b: Facets, q: number, square: number): boolean {
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    const a0 = a[p + axis];
    const a1 = a[p + 3 + axis];
    const a2 = a[p + 6 + axis];
    const b0 = b[q + axis];
    const b1 = b[q + 3 + axis];
    const b2 = b[q + 6 + axis];
    const under = Math.min(b0, b1, b2) - Math.max(a0, a1, a2);
    const over = Math.min(a0, a1, a2) - Math.max(b0, b1, b2);
    const gap = Math.max(under, over, 0);
    sum += gap * gap;
  }
  return sum >= square;
}

function straddles(h0: number, h1: number, h2: number): boolean {
  return Math.min(h0, h1, h2) < 0 && Math.max(h0, h1, h2) > 0;
}

/** Corner at `c` against the inside of the facet at `f`, over whose plane it has the height `h`. */
function cornerToFace(
  corners: Facets,
  c: number,
  facets: Facets,
  f: number,
  h: number,
  found: Nearest,
  side: 0 | 3,
): void {
  if (h * h >= found[SQUARE]) return;
  const x = corners[c];
  const y = corners[c + 1];
  const z = corners[c + 2];
  if (!above(facets, f, x, y, z)) return;
  found[side] = x;
  found[side + 1] = y;
  found[side + 2] = z;
  found[3 - side] = x - h * facets[f + NORMAL];
  found[4 - side] = y - h * facets[f + NORMAL + 1];
  found[5 - side] = z - h * facets[f + NORMAL + 2];
  found[SQUARE] = h * h;
}

/** True when the point lies over the inside or border of the facet, seen along its normal; never without area. */
function above(facets: Facets, f: number, x: number, y: number, z: number): boolean {
  const nx = facets[f + NORMAL];
  const ny = facets[f + NORMAL + 1];
  const nz = facets[f + NORMAL + 2];
  if (nx === 0 && ny === 0 && nz === 0) return false;
  for (let k = 0, before = 6; k < 9; before = k, k += 3) {
    const fx = facets[f + before];
    const fy = facets[f + before + 1];
    const fz = facets[f + before + 2];
    const ex = facets[f + k] - fx;
    const ey = facets[f + k + 1] - fy;
    const ez = facets[f + k + 2] - fz;
    const inward =
      (ny * ez - nz * ey) * (x - fx) + (nz * ex - nx * ez) * (y - fy) + (nx * ey - ny * ex) * (z - fz);
    if (inward < 0) return false;
  }
  return true;
}

/** Corner at `c` against the edge from `s` to `e`; an edge of no length counts as its start. */
function cornerToEdge(
  corners: Facets,
  c: number,
  edges: Facets,
  s: number,
  e: number,
  found: Nearest,
  side: 0 | 3,
): void {
  const dx = edges[e] - edges[s];
  const dy = edges[e + 1] - edges[s + 1];
  const dz = edges[e + 2] - edges[s + 2];
  const rx = corners[c] - edges[s];
  const ry = corners[c + 1] - edges[s + 1];
  const rz = corners[c + 2] - edges[s + 2];
  const along = rx * dx + ry * dy + rz * dz;
  const length = dx * dx + dy * dy + dz * dz;
  const t = along > 0 ? (along < length ? along / length : 1) : 0;
  // The last end is written as itself, so that two corners in one place are at distance zero exactly.
  const x = t === 1 ? edges[e] : edges[s] + t * dx;
  const y = t === 1 ? edges[e + 1] : edges[s + 1] + t * dy;
  const z = t === 1 ? edges[e + 2] : edges[s + 2] + t * dz;
  const square = (corners[c] - x) ** 2 + (corners[c + 1] - y) ** 2 + (corners[c + 2] - z) ** 2;
  if (square >= found[SQUARE]) return;
  found[side] = corners[c];
  found[side + 1] = corners[c + 1];
  found[side + 2] = corners[c + 2];
  found[3 - side] = x;
  found[4 - side] = y;
  found[5 - side] = z;
  found[SQUARE] = square;
}

/**
 * Edge from `s` to `e` against edge from `u` to `v`, inside both of them; their ends are left to `cornerToEdge`.
 * The two parameters come from the common normal n = d × f: s = [r f n]/n², t = [r d n]/n². Unlike the usual
 * elimination, whose determinant loses twice the digits, this stays accurate for edges nearly parallel.
 */
function edgeToEdge(a: Facets, s: number, e: number, b: Facets, u: number, v: number, found: Nearest): void {
  const dx = a[e] - a[s];
  const dy = a[e + 1] - a[s + 1];
  const dz = a[e + 2] - a[s + 2];
  const fx = b[v] - b[u];
  const fy = b[v + 1] - b[u + 1];
  const fz = b[v + 2] - b[u + 2];
  const nx = dy * fz - dz * fy;
  const ny = dz * fx - dx * fz;
  const nz = dx * fy - dy * fx;
  const normal = nx * nx + ny * ny + nz * nz;
  const rx = b[u] - a[s];
  const ry = b[u + 1] - a[s + 1];
  const rz = b[u + 2] - a[s + 2];
  const across = rx * nx + ry * ny + rz * nz;
  if (!(across * across < found[SQUARE] * normal)) return;
  const first = (ry * fz - rz * fy) * nx + (rz * fx - rx * fz) * ny + (rx * fy - ry * fx) * nz;
  if (first <= 0 || first >= normal) return;
  const second = (ry * dz - rz * dy) * nx + (rz * dx - rx * dz) * ny + (rx * dy - ry * dx) * nz;
  if (second <= 0 || second >= normal) return;
  const ax = a[s] + (first / normal) * dx;
  const ay = a[s + 1] + (first / normal) * dy;
  const az = a[s + 2] + (first / normal) * dz;
  const bx = b[u] + (second / normal) * fx;
  const by = b[u + 1] + (second / normal) * fy;
  const bz = b[u + 2] + (second / normal) * fz;
  // Measured between the points themselves, so that no rounding can make this less than a distance that exists.
  const square = (ax - bx) ** 2 + (ay - by) ** 2 + (az - bz) ** 2;
  if (square >= found[SQUARE]) return;
  found[0] = ax;
  found[1] = ay;
  found[2] = az;
  found[3] = bx;
  found[4] = by;
  found[5] = bz;
  found[SQUARE] = square;
}

/** Sets `found` to zero when the edge from `s` to `e` goes through the facet at `f`. */
function pierce(edges: Facets, s: number, e: number, facets: Facets, f: number, found: Nearest): void {
  const from = height(facets, f, edges, s);
  const to = height(facets, f, edges, e);
  if (from > 0 === to > 0) return;
  const t = from / (from - to);
  const x = edges[s] + t * (edges[e] - edges[s]);
  const y = edges[s + 1] + t * (edges[e + 1] - edges[s + 1]);
  const z = edges[s + 2] + t * (edges[e + 2] - edges[s + 2]);
  if (!above(facets, f, x, y, z)) return;
  found[0] = found[3] = x;
  found[1] = found[4] = y;
  found[2] = found[5] = z;
  found[SQUARE] = 0;
}

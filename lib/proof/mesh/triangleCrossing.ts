import { differenceOfProducts, type Facets, NORMAL } from './facets.js';

/**
 * True when two facets cross, or lie on each other, by more than `slack` mm: when no shift of that length or less
 * would leave them at most touching. Touching in a point or along a line, as neighbours in a mesh do at their
 * common corner or edge, is not crossing however the touching came about, so the test needs no knowledge of which
 * corners are shared. Flat overlap is: facets that lie within `slack` of one plane and share more than a border
 * there, as when neighbours fold back onto each other.
 *
 * Source: separating axes of two triangles, the two normals and the nine products of edges (S. Gottschalk,
 * M. C. Lin, D. Manocha, OBBTree, SIGGRAPH 1996, for boxes; from memory), here for the depth instead of a yes
 * or no. Every axis on which the shadows overlap by no more than `slack` is proof that a shift along it is enough.
 */
export function facetsCross(a: Facets, p: number, b: Facets, q: number, slack: number): boolean {
  const aFlat = planeVerdict(a, p, b, q, slack);
  if (aFlat === APART) return false;
  const bFlat = planeVerdict(b, q, a, p, slack);
  if (bFlat === APART) return false;
  if (aFlat === FLAT) return overlapInPlane(a, p, a, p, b, q, slack);
  if (bFlat === FLAT) return overlapInPlane(b, q, a, p, b, q, slack);
  if (aFlat === TOUCHES || bFlat === TOUCHES) return false;
  for (let k = 0, before = 6; k < 9; before = k, k += 3)
    for (let l = 0, last = 6; l < 9; last = l, l += 3)
      if (edgesPart(a, p, p + before, p + k, b, q, q + last, q + l, slack)) return false;
  return true;
}

/** Wholly on one side of the plane, farther off than the slack. */
const APART = 0;
/** On one side of the plane but for the slack. */
const TOUCHES = 1;
/** Within the slack of the plane. */
const FLAT = 2;
/** On both sides of the plane, or the facet has no plane. */
const THROUGH = 3;

/** How the facet at `q` stands to the plane of the facet at `p`. */
function planeVerdict(a: Facets, p: number, b: Facets, q: number, slack: number): number {
  const nx = a[p + NORMAL];
  const ny = a[p + NORMAL + 1];
  const nz = a[p + NORMAL + 2];
  if (nx === 0 && ny === 0 && nz === 0) return THROUGH;
  const h0 = nx * (b[q] - a[p]) + ny * (b[q + 1] - a[p + 1]) + nz * (b[q + 2] - a[p + 2]);
  const h1 = nx * (b[q + 3] - a[p]) + ny * (b[q + 4] - a[p + 1]) + nz * (b[q + 5] - a[p + 2]);
  const h2 = nx * (b[q + 6] - a[p]) + ny * (b[q + 7] - a[p + 1]) + nz * (b[q + 8] - a[p + 2]);
  const least = Math.min(h0, h1, h2);
  const greatest = Math.max(h0, h1, h2);
  if (least > slack || greatest < -slack) return APART;
  if (least >= -slack) return greatest <= slack ? FLAT : TOUCHES;
  return greatest <= slack ? TOUCHES : THROUGH;
}

/** True when the two shadows on the plane of the facet at `f` overlap by more than the slack, in every direction. */
function overlapInPlane(
  plane: Facets,
  f: number,
  a: Facets,
  p: number,
  b: Facets,
  q: number,
  slack: number,
): boolean {
  const nx = plane[f + NORMAL];
  const ny = plane[f + NORMAL + 1];
  const nz = plane[f + NORMAL + 2];
  for (let edge = 0; edge < 6; edge++) {
    const of = edge < 3 ? a : b;
    const base = edge < 3 ? p : q;
    const s = base + 3 * (edge % 3);
    const e = base + 3 * ((edge + 1) % 3);
    const ex = of[e] - of[s];
    const ey = of[e + 1] - of[s + 1];
    const ez = of[e + 2] - of[s + 2];
    if (partedAlong(ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex, a, p, b, q, slack)) return false;
  }
  return true;
}

/** Square of the sine below which a product of edges is worked out to full relative accuracy. */
const NEARLY_PARALLEL = 1e-6;

/** True when the shadows along the common normal of an edge of each overlap by no more than the slack. */
function edgesPart(
  a: Facets,
  p: number,
  s: number,
  e: number,
  b: Facets,
  q: number,
  u: number,
  v: number,
  slack: number,
): boolean {
  const dx = a[e] - a[s];
  const dy = a[e + 1] - a[s + 1];
  const dz = a[e + 2] - a[s + 2];
  const fx = b[v] - b[u];
  const fy = b[v + 1] - b[u + 1];
  const fz = b[v + 2] - b[u + 2];
  let x = dy * fz - dz * fy;
  let y = dz * fx - dx * fz;
  let z = dx * fy - dy * fx;
  const lengths = (dx * dx + dy * dy + dz * dz) * (fx * fx + fy * fy + fz * fz);
  if (x * x + y * y + z * z < NEARLY_PARALLEL * lengths) {
    x = differenceOfProducts(dy, fz, dz, fy);
    y = differenceOfProducts(dz, fx, dx, fz);
    z = differenceOfProducts(dx, fy, dy, fx);
  }
  return partedAlong(x, y, z, a, p, b, q, slack);
}

/** True when the shadows on the direction (x, y, z), of any length but 0, overlap by no more than the slack. */
function partedAlong(
  x: number,
  y: number,
  z: number,
  a: Facets,
  p: number,
  b: Facets,
  q: number,
  slack: number,
): boolean {
  const length = Math.sqrt(x * x + y * y + z * z);
  if (length === 0) return false;
  const ox = a[p];
  const oy = a[p + 1];
  const oz = a[p + 2];
  const a1 = x * (a[p + 3] - ox) + y * (a[p + 4] - oy) + z * (a[p + 5] - oz);
  const a2 = x * (a[p + 6] - ox) + y * (a[p + 7] - oy) + z * (a[p + 8] - oz);
  const b0 = x * (b[q] - ox) + y * (b[q + 1] - oy) + z * (b[q + 2] - oz);
  const b1 = x * (b[q + 3] - ox) + y * (b[q + 4] - oy) + z * (b[q + 5] - oz);
  const b2 = x * (b[q + 6] - ox) + y * (b[q + 7] - oy) + z * (b[q + 8] - oz);
  const upper = Math.max(0, a1, a2) - Math.min(b0, b1, b2);
  const lower = Math.max(b0, b1, b2) - Math.min(0, a1, a2);
  return Math.min(upper, lower) <= slack * length;
}

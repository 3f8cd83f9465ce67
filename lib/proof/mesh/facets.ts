import type { Mesh } from '../../solid/mesh.js';

/**
 * Triangles laid out for measuring: twelve numbers each, three corners (x, y, z, mm) and then the unit normal,
 * which is 0, 0, 0 when the triangle has no area.
 */
export type Facets = Float64Array;

/** Numbers a facet takes in `Facets`. */
export const FACET = 12;

/** Where the unit normal starts within a facet. */
export const NORMAL = 9;

/**
 * The triangles of a mesh as facets, in the order given.
 * @param order indices into the mesh's triangles
 */
export function facetsOf(mesh: Mesh, order: Uint32Array): Facets {
  const { positions, triangles } = mesh;
  const facets = new Float64Array(FACET * order.length);
  for (let i = 0; i < order.length; i++) {
    for (let corner = 0; corner < 3; corner++) {
      const from = 3 * triangles[3 * order[i] + corner];
      const to = FACET * i + 3 * corner;
      facets[to] = positions[from];
      facets[to + 1] = positions[from + 1];
      facets[to + 2] = positions[from + 2];
    }
    writeNormal(facets, FACET * i);
  }
  return facets;
}

/**
 * Writes the unit normal of the facet at `at`, from its three corners. The two shorter edges span it, and every
 * component keeps full relative accuracy, so that the normal of a long sliver is as good as any other.
 */
function writeNormal(facets: Facets, at: number): void {
  const abx = facets[at + 3] - facets[at];
  const aby = facets[at + 4] - facets[at + 1];
  const abz = facets[at + 5] - facets[at + 2];
  const bcx = facets[at + 6] - facets[at + 3];
  const bcy = facets[at + 7] - facets[at + 4];
  const bcz = facets[at + 8] - facets[at + 5];
  const cax = facets[at] - facets[at + 6];
  const cay = facets[at + 1] - facets[at + 7];
  const caz = facets[at + 2] - facets[at + 8];
  const ab = abx * abx + aby * aby + abz * abz;
  const bc = bcx * bcx + bcy * bcy + bcz * bcz;
  const ca = cax * cax + cay * cay + caz * caz;
  if (ca >= ab && ca >= bc) writeUnitCross(abx, aby, abz, bcx, bcy, bcz, facets, at + NORMAL);
  else if (ab >= bc) writeUnitCross(bcx, bcy, bcz, cax, cay, caz, facets, at + NORMAL);
  else writeUnitCross(cax, cay, caz, abx, aby, abz, facets, at + NORMAL);
}

function writeUnitCross(
  ux: number,
  uy: number,
  uz: number,
  vx: number,
  vy: number,
  vz: number,
  to: Float64Array,
  at: number,
): void {
  const x = differenceOfProducts(uy, vz, uz, vy);
  const y = differenceOfProducts(uz, vx, ux, vz);
  const z = differenceOfProducts(ux, vy, uy, vx);
  const length = Math.sqrt(x * x + y * y + z * z);
  const scale = length > 0 ? 1 / length : 0;
  to[at] = x * scale;
  to[at + 1] = y * scale;
  to[at + 2] = z * scale;
}

/**
 * a b − c d with a relative error of a few rounding units even when the products nearly cancel.
 * Source: T. J. Dekker, A floating-point technique for extending the available precision, Numer. Math. 18
 * (1971) 224–242 (exact product of two doubles as a sum of two); from memory.
 */
export function differenceOfProducts(a: number, b: number, c: number, d: number): number {
  const ab = a * b;
  const cd = c * d;
  const difference = ab - cd;
  // Without cancellation the plain difference is good already, and most calls end here.
  if (Math.abs(difference) > 0.01 * (Math.abs(ab) + Math.abs(cd))) return difference;
  return difference + (productError(a, b, ab) - productError(c, d, cd));
}

/** 2^27 + 1, which splits a double into two halves of 26 bits. */
const SPLITTER = 134217729;

/** a b − `product` exactly, where `product` is a b rounded; for factors far from overflow. */
function productError(a: number, b: number, product: number): number {
  const as = SPLITTER * a;
  const aHigh = as - (as - a);
  const aLow = a - aHigh;
  const bs = SPLITTER * b;
  const bHigh = bs - (bs - b);
  const bLow = b - bHigh;
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

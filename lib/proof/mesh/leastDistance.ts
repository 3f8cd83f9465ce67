import { refuse } from '../../refusal.js';
import { boxGapSquared, boxGirth } from './boxes.js';
import { FACET } from './facets.js';
import { lowerToFacets, type Nearest, nearest, SQUARE } from './triangleDistance.js';
import type { DistanceTree } from './triangleTree.js';
import { windingNumber } from './windingNumber.js';

/** How far two bodies are apart, and where. */
export interface LeastDistance {
  /** mm; 0 where the surfaces touch or cross, and where one body lies inside the other's solid. */
  distance: number;
  /** Where the distance is found on the first body, mm. */
  pointA: [number, number, number];
  /** Where it is found on the second body, mm. */
  pointB: [number, number, number];
  /** True when the surfaces do not meet, yet a piece of one body lies inside the solid of the other. */
  inside: boolean;
}

/**
 * Least distance between two bodies, null when they are farther apart than `within`. Exact for the meshes, up to
 * rounding: every pair of triangles that could be nearer than the least found is measured. A body in a hollow
 * of the other, such as a planet in the bore of a ring, is outside the other's solid and is measured like any
 * other; one inside the solid is at distance 0 with `inside` true, both points being the corner found inside.
 * @param within the largest distance of interest, mm, 0 or more, Infinity allowed; the smaller, the faster
 * @throws Refusal when `within` is negative or not a number
 */
export function leastDistance(a: DistanceTree, b: DistanceTree, within: number): LeastDistance | null {
  if (!(within >= 0)) refuse('out-of-range', 'within', within, 'a distance of 0 mm or more', [0]);
  // One part in 2^50 more, so that a distance of exactly `within` counts as found.
  const found = nearest(Math.max(within * within * (1 + 2 ** -50), Number.MIN_VALUE));
  const limit = found[SQUARE];
  search(a, b, found);
  const met = found[SQUARE] === 0;
  const corner = met ? null : (cornerInside(a, b) ?? cornerInside(b, a));
  if (corner) return { distance: 0, pointA: corner, pointB: [...corner], inside: true };
  if (found[SQUARE] === limit) return null;
  return {
    distance: Math.sqrt(found[SQUARE]),
    pointA: [found[0], found[1], found[2]],
    pointB: [found[3], found[4], found[5]],
    inside: false,
  };
}

/**
 * Depth-first over pairs of nodes, the nearer pair first, leaving out pairs whose boxes are not nearer than the
 * least found. Of a pair the larger node is opened, so at most one pair waits for every level of either tree.
 */
function search(a: DistanceTree, b: DistanceTree, found: Nearest): void {
  const waiting: number[] = [];
  const waitingGap: number[] = [];
  let i = 0;
  let j = 0;
  let gap = boxGapSquared(a.boxes, 0, b.boxes, 0);
  for (;;) {
    while (gap < found[SQUARE]) {
      if (i >= a.firstLeaf && j >= b.firstLeaf) {
        searchLeaves(a, i, b, j, found);
        break;
      }
      const opensA = j >= b.firstLeaf || (i < a.firstLeaf && boxGirth(a.boxes, i) >= boxGirth(b.boxes, j));
      const i1 = opensA ? 2 * i + 1 : i;
      const j1 = opensA ? j : 2 * j + 1;
      const i2 = opensA ? i1 + 1 : i;
      const j2 = opensA ? j : j1 + 1;
      const gap1 = boxGapSquared(a.boxes, i1, b.boxes, j1);
      const gap2 = boxGapSquared(a.boxes, i2, b.boxes, j2);
      const firstIsNearer = gap1 <= gap2;
      waiting.push(firstIsNearer ? i2 : i1, firstIsNearer ? j2 : j1);
      waitingGap.push(Math.max(gap1, gap2));
      i = firstIsNearer ? i1 : i2;
      j = firstIsNearer ? j1 : j2;
      gap = Math.min(gap1, gap2);
    }
    if (waitingGap.length === 0 || found[SQUARE] === 0) return;
    gap = waitingGap.pop()!;
    j = waiting.pop()!;
    i = waiting.pop()!;
  }
}

function searchLeaves(a: DistanceTree, i: number, b: DistanceTree, j: number, found: Nearest): void {
  const aEnd = FACET * a.leafStart[i - a.firstLeaf + 1];
  const bStart = FACET * b.leafStart[j - b.firstLeaf];
  const bEnd = FACET * b.leafStart[j - b.firstLeaf + 1];
  for (let p = FACET * a.leafStart[i - a.firstLeaf]; p < aEnd; p += FACET)
    for (let q = bStart; q < bEnd; q += FACET) lowerToFacets(a.facets, p, b.facets, q, found);
}

/** A corner of `body` that lies inside the solid of `other`, one corner tried for each shell of `body`. */
function cornerInside(body: DistanceTree, other: DistanceTree): [number, number, number] | null {
  const [minX, minY, minZ, maxX, maxY, maxZ] = other.boxes;
  for (const [x, y, z] of body.shellPoints) {
    const boxed = x >= minX && x <= maxX && y >= minY && y <= maxY && z >= minZ && z <= maxZ;
    if (boxed && windingNumber(other, x, y, z) !== 0) return [x, y, z];
  }
  return null;
}

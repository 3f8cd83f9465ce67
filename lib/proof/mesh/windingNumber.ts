import { FACET, NORMAL } from './facets.js';
import type { DistanceTree } from './triangleTree.js';

/**
 * How many times the surface of a closed mesh winds around a point: 1 inside a solid, 0 outside, −1 inside a
 * solid that is turned inside out. Counted along a ray in +x. A ray that runs through an edge or a corner is
 * counted by the half-open rule: every edge decides for itself on which side the ray passes, and decides alike
 * for both of its triangles, so the crossings always add up. A point on the surface itself may count either way.
 * Cost: the nodes that the ray meets.
 */
export function windingNumber(tree: DistanceTree, x: number, y: number, z: number): number {
  const { boxes, firstLeaf, leafStart } = tree;
  const waiting = [0];
  let turns = 0;
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const box = 6 * node;
    if (x > boxes[box + 3] || y < boxes[box + 1] || y > boxes[box + 4]) continue;
    if (z < boxes[box + 2] || z > boxes[box + 5]) continue;
    if (node < firstLeaf) {
      waiting.push(2 * node + 1, 2 * node + 2);
      continue;
    }
    for (let facet = leafStart[node - firstLeaf]; facet < leafStart[node - firstLeaf + 1]; facet++)
      turns += crossing(tree.facets, FACET * facet, x, y, z);
  }
  return turns;
}

/** +1 where the ray leaves through the facet, −1 where it enters, 0 where it misses. */
function crossing(facets: Float64Array, at: number, x: number, y: number, z: number): number {
  const turn =
    passes(facets, at, at + 3, y, z) +
    passes(facets, at + 3, at + 6, y, z) +
    passes(facets, at + 6, at, y, z);
  return turn !== 0 && hitAt(facets, at, y, z) > x ? turn : 0;
}

/** Signed count of the edge from `s` to `e` crossing the half line z' = z, y' > y in the yz plane. */
function passes(corners: Float64Array, s: number, e: number, y: number, z: number): number {
  const rises = corners[s + 2] <= z && corners[e + 2] > z;
  const falls = corners[e + 2] <= z && corners[s + 2] > z;
  if (!rises && !falls) return 0;
  // Evaluated from the lower end whichever way the edge runs: the same figure for both triangles beside it.
  const low = rises ? s : e;
  const high = rises ? e : s;
  const side =
    (corners[low + 1] - y) * (corners[high + 2] - z) - (corners[high + 1] - y) * (corners[low + 2] - z);
  if (side <= 0) return 0;
  return rises ? 1 : -1;
}

/** The x at which the line through (y, z) meets the facet's plane, kept within the facet. */
function hitAt(facets: Float64Array, at: number, y: number, z: number): number {
  const least = Math.min(facets[at], facets[at + 3], facets[at + 6]);
  const greatest = Math.max(facets[at], facets[at + 3], facets[at + 6]);
  const tilt =
    facets[at + NORMAL + 1] * (facets[at + 1] - y) + facets[at + NORMAL + 2] * (facets[at + 2] - z);
  const hit = facets[at] + tilt / facets[at + NORMAL];
  return Number.isNaN(hit) ? greatest : Math.min(Math.max(hit, least), greatest);
}

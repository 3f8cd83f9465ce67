import { refuse } from '../../refusal.js';
import type { Mesh } from '../../solid/mesh.js';
import { FACET } from './facets.js';
import { facetsCross } from './triangleCrossing.js';
import { type TriangleTree, triangleTree } from './triangleTree.js';

/**
 * How deep two triangles may cross and still count as touching, as a share of the diagonal of the mesh's box:
 * 1e-9 mm for a ring of 100 mm. It is some 10 000 times the rounding of the vertices, and a thousandth of what
 * the 32-bit numbers of an STL file can hold.
 */
const TOUCHING = 1e-11;

/**
 * Pairs of triangles of one mesh that cross each other, or lie on each other, deeper than touching: see
 * `facetsCross` for the measure. Neighbours at a common edge count when they fold back onto each other, and
 * neighbours at a common vertex when one goes through the other beyond that vertex. Touching (a corner or an edge
 * that rests on another triangle) does not count.
 * @param tree the tree over `mesh`, when there is one already
 * @param most stop after this many pairs, 1 or more [10]; the pairs found first, not the deepest
 * @returns index pairs into the mesh's triangles, the lower index first; empty when the surface is clean
 * @throws Refusal as `triangleTree` does, for a tree over another mesh, and for a `most` below 1
 */
export function selfIntersections(
  mesh: Mesh,
  tree: TriangleTree = triangleTree(mesh),
  most = 10,
): [number, number][] {
  if (tree.mesh !== mesh)
    refuse('bad-mesh', 'tree', 'a tree over another mesh', 'a tree over the mesh itself');
  if (!(most >= 1)) refuse('out-of-range', 'most', most, 'a count of 1 or more', [1]);
  const { boxes, firstLeaf } = tree;
  const slack = TOUCHING * diagonal(boxes);
  const pairs: [number, number][] = [];
  const waiting = [0, 0];
  while (waiting.length > 0 && pairs.length < most) {
    const j = waiting.pop()!;
    const i = waiting.pop()!;
    if (i === j) {
      if (i >= firstLeaf) crossLeaves(tree, i, j, slack, most, pairs);
      else {
        waiting.push(2 * i + 1, 2 * i + 2, 2 * i + 2, 2 * i + 2, 2 * i + 1, 2 * i + 1);
      }
      continue;
    }
    if (!boxesMeet(boxes, 6 * i, 6 * j, slack)) continue;
    if (i >= firstLeaf && j >= firstLeaf) crossLeaves(tree, i, j, slack, most, pairs);
    else if (i < j ? i < firstLeaf : j >= firstLeaf) waiting.push(2 * i + 1, j, 2 * i + 2, j);
    else waiting.push(i, 2 * j + 1, i, 2 * j + 2);
  }
  return pairs;
}

function crossLeaves(
  { firstLeaf, leafStart, facets, order }: TriangleTree,
  i: number,
  j: number,
  slack: number,
  most: number,
  pairs: [number, number][],
): void {
  const iEnd = leafStart[i - firstLeaf + 1];
  const jEnd = leafStart[j - firstLeaf + 1];
  for (let p = leafStart[i - firstLeaf]; p < iEnd; p++)
    for (let q = i === j ? p + 1 : leafStart[j - firstLeaf]; q < jEnd; q++) {
      if (!facetsCross(facets, FACET * p, facets, FACET * q, slack)) continue;
      pairs.push([Math.min(order[p], order[q]), Math.max(order[p], order[q])]);
      if (pairs.length >= most) return;
    }
}

function boxesMeet(boxes: Float64Array, i: number, j: number, slack: number): boolean {
  return (
    boxes[i] <= boxes[j + 3] + slack &&
    boxes[j] <= boxes[i + 3] + slack &&
    boxes[i + 1] <= boxes[j + 4] + slack &&
    boxes[j + 1] <= boxes[i + 4] + slack &&
    boxes[i + 2] <= boxes[j + 5] + slack &&
    boxes[j + 2] <= boxes[i + 5] + slack
  );
}

function diagonal(boxes: Float64Array): number {
  return Math.hypot(boxes[3] - boxes[0], boxes[4] - boxes[1], boxes[5] - boxes[2]);
}

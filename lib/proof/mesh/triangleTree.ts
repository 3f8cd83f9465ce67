import { refuse } from '../../refusal.js';
import type { Mesh } from '../../solid/mesh.js';
import { FACET, type Facets, facetsOf, NORMAL } from './facets.js';
import { guardIndices, guardPositions } from './guard.js';
import { shellPoints } from './shells.js';

/**
 * Tree of axis-aligned boxes over the triangles of a mesh, as flat arrays. It is a complete binary tree: the
 * children of node i are 2i + 1 and 2i + 2, and nodes from `firstLeaf` on are leaves. Leaf k (node
 * `firstLeaf` + k) holds the facets from `leafStart[k]` up to, not including, `leafStart[k + 1]`.
 */
export interface TriangleTree {
  mesh: Mesh;
  /** Box of node i at 6i: least x, y, z, then greatest x, y, z, mm. */
  boxes: Float64Array;
  firstLeaf: number;
  leafStart: Uint32Array;
  /** Index in the mesh of the triangle that facet j is. */
  order: Uint32Array;
  facets: Facets;
  /** One corner of every connected piece of the surface, mm. */
  shellPoints: [number, number, number][];
}

/** What distances are measured with; a body that has moved has no more than that. */
export type DistanceTree = Omit<TriangleTree, 'mesh' | 'order'>;

/** A leaf holds at most this many triangles, and at least one; 1 and 8 measured slower. */
const LEAF = 3;

/**
 * Builds the tree: ranges are halved at the median centroid along the axis on which centroids spread widest.
 * The same mesh always gives the same tree.
 * @throws Refusal when the mesh has no triangle, a position is not finite, or an index points past the vertices
 */
export function triangleTree(mesh: Mesh): TriangleTree {
  guardIndices(mesh);
  guardPositions(mesh);
  if (mesh.triangles.length === 0) refuse('bad-mesh', 'mesh.triangles', 0, 'at least one triangle');
  const count = mesh.triangles.length / 3;
  let leaves = 1;
  while (count > LEAF * leaves) leaves *= 2;
  const leafStart = new Uint32Array(leaves + 1);
  for (let leaf = 0; leaf <= leaves; leaf++) leafStart[leaf] = Math.floor((leaf * count) / leaves);
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  halve(order, centroids(mesh), leafStart, 0, leaves);
  const facets = facetsOf(mesh, order);
  const firstLeaf = leaves - 1;
  return {
    mesh,
    boxes: boxesOf(facets, leafStart, firstLeaf),
    firstLeaf,
    leafStart,
    order,
    facets,
    shellPoints: shellPoints(mesh),
  };
}

/**
 * A piece of a tree: what hangs from one of its nodes. It is a surface with a rim and has no inside.
 * @param depth of the node: of the root's it is 0; no deeper than the leaves
 * @param number of the node at that depth, from 0
 */
export function subtree(
  { facets, leafStart, firstLeaf }: DistanceTree,
  depth: number,
  number: number,
): DistanceTree {
  const leaves = firstLeaf + 1;
  const count = Math.max(1, leaves / 2 ** depth);
  const starts = leafStart.slice(number * count, (number + 1) * count + 1);
  const from = starts[0];
  const piece = facets.slice(FACET * from, FACET * starts[count]);
  const ownStarts = starts.map((start) => start - from);
  return {
    facets: piece,
    boxes: boxesOf(piece, ownStarts, count - 1),
    leafStart: ownStarts,
    firstLeaf: count - 1,
    shellPoints: [],
  };
}

/** Three times the centroid of every triangle: only their order matters. */
function centroids({ positions, triangles }: Mesh): Float64Array {
  const sums = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i];
    const b = 3 * triangles[i + 1];
    const c = 3 * triangles[i + 2];
    sums[i] = positions[a] + positions[b] + positions[c];
    sums[i + 1] = positions[a + 1] + positions[b + 1] + positions[c + 1];
    sums[i + 2] = positions[a + 2] + positions[b + 2] + positions[c + 2];
  }
  return sums;
}

/** Sorts the triangles of leaves `from` … `to` so that each half of the leaves gets one half of the space. */
function halve(
  order: Uint32Array,
  keys: Float64Array,
  leafStart: Uint32Array,
  from: number,
  to: number,
): void {
  if (to - from < 2) return;
  const middle = (from + to) / 2;
  const start = leafStart[from];
  const end = leafStart[to];
  partition(order, keys, widestAxis(order, keys, start, end), start, end - 1, leafStart[middle]);
  halve(order, keys, leafStart, from, middle);
  halve(order, keys, leafStart, middle, to);
}

function widestAxis(order: Uint32Array, keys: Float64Array, start: number, end: number): number {
  let widest = 0;
  let width = -1;
  for (let axis = 0; axis < 3; axis++) {
    let least = Infinity;
    let greatest = -Infinity;
    for (let i = start; i < end; i++) {
      const key = keys[3 * order[i] + axis];
      if (key < least) least = key;
      if (key > greatest) greatest = key;
    }
    if (greatest - least > width) {
      width = greatest - least;
      widest = axis;
    }
  }
  return widest;
}

/**
 * Rearranges order[low … high] so that place `target` holds what sorting would put there, with nothing larger
 * before it and nothing smaller after it. Hoare's selection with the median of three as pivot.
 */
function partition(
  order: Uint32Array,
  keys: Float64Array,
  axis: number,
  low: number,
  high: number,
  target: number,
): void {
  while (low < high) {
    const pivot = medianKey(order, keys, axis, low, high);
    let i = low;
    let j = high;
    while (i <= j) {
      while (keys[3 * order[i] + axis] < pivot) i++;
      while (keys[3 * order[j] + axis] > pivot) j--;
      if (i > j) break;
      const swapped = order[i];
      order[i++] = order[j];
      order[j--] = swapped;
    }
    if (target <= j) high = j;
    else if (target >= i) low = i;
    else return;
  }
}

function medianKey(order: Uint32Array, keys: Float64Array, axis: number, low: number, high: number): number {
  const a = keys[3 * order[low] + axis];
  const b = keys[3 * order[(low + high) >> 1] + axis];
  const c = keys[3 * order[high] + axis];
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/** Boxes of all nodes around facets that stand in leaf order. */
export function boxesOf(facets: Facets, leafStart: Uint32Array, firstLeaf: number): Float64Array {
  const boxes = new Float64Array(6 * (2 * firstLeaf + 1));
  for (let node = 2 * firstLeaf; node >= firstLeaf; node--) {
    const start = FACET * leafStart[node - firstLeaf];
    const end = FACET * leafStart[node - firstLeaf + 1];
    for (let axis = 0; axis < 3; axis++) {
      let least = facets[start + axis];
      let greatest = least;
      for (let at = start + axis; at < end; at += FACET)
        for (let corner = at; corner < at + NORMAL; corner += 3) {
          const value = facets[corner];
          if (value < least) least = value;
          if (value > greatest) greatest = value;
        }
      boxes[6 * node + axis] = least;
      boxes[6 * node + 3 + axis] = greatest;
    }
  }
  for (let node = firstLeaf - 1; node >= 0; node--) {
    const to = 6 * node;
    const left = 6 * (2 * node + 1);
    for (let least = 0; least < 3; least++) {
      const greatest = least + 3;
      boxes[to + least] = Math.min(boxes[left + least], boxes[left + 6 + least]);
      boxes[to + greatest] = Math.max(boxes[left + greatest], boxes[left + 6 + greatest]);
    }
  }
  return boxes;
}

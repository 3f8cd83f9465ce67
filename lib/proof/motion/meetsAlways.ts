import type { Motion } from '../../fit/play/contact.js';
import { leastDistance } from '../mesh/leastDistance.js';
import { type DistanceTree, subtree } from '../mesh/triangleTree.js';
import { movedTree } from './movedTree.js';
import { centreOf, type MovingSet, matesOf } from './movingSet.js';

/** The part of a tree that is kept is its share of one in 2^5: about a tooth of a gear, or one end of some. */
const DEPTH = 5;

/**
 * Whether a part meets another one after each of many motions that lie close together. What met last very likely meets again,
 * and moving a whole body costs far more than looking: so only the piece of it that met is moved at first, and the whole
 * body where that piece is clear.
 */
export function meetsAlways({ set, trees }: MovingSet, name: string, motions: readonly Motion[]): boolean {
  const tree = trees.get(name)!;
  const centre = centreOf(set, name);
  const mates = matesOf(set, name).map((mate) => trees.get(mate)!);
  let last: { piece: DistanceTree; mate: DistanceTree } | undefined;
  return motions.every((motion) => {
    if (last && meets(movedTree(last.piece, motion, centre), last.mate)) return true;
    const moved = movedTree(tree, motion, centre);
    const mate = mates.find((one) => meets(moved, one));
    const where = mate && leastDistance(moved, mate, 0)!;
    last =
      where && !where.inside
        ? { piece: subtree(tree, DEPTH, nearestNode(moved, where.pointA)), mate }
        : undefined;
    return mate !== undefined;
  });
}

function meets(a: DistanceTree, b: DistanceTree): boolean {
  return leastDistance(a, b, 0) !== null;
}

/** Which of the nodes at the depth, counted from 0, has its box nearest to a point. */
function nearestNode({ boxes, firstLeaf }: DistanceTree, point: readonly number[]): number {
  const count = Math.min(2 ** DEPTH, firstLeaf + 1);
  let least = Infinity;
  let found = 0;
  for (let node = 0; node < count; node++) {
    const at = 6 * (count - 1 + node);
    const off = point.map((x, axis) => Math.max(boxes[at + axis] - x, 0, x - boxes[at + 3 + axis]));
    const distance = Math.hypot(...off);
    if (distance < least) [least, found] = [distance, node];
  }
  return found;
}

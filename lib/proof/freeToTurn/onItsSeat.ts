import type { InUse } from '../../solid/inUse.js';
import type { DistanceTree } from '../mesh/triangleTree.js';
import { movedTree } from '../motion/movedTree.js';

/** A part where it is used, lifted off its seat by a hair, mm. */
export function onItsSeat(tree: DistanceTree, { motion, about }: InUse, hair: number): DistanceTree {
  const [x, y, z, ...turn] = motion;
  return movedTree(tree, [x, y, z + hair, ...turn], about);
}

import type { Motion } from '../../fit/play/contact.js';
import { FACET, NORMAL } from '../mesh/facets.js';
import { boxesOf, type DistanceTree } from '../mesh/triangleTree.js';
import { rotationMatrix } from '../rotationMatrix.js';

/** A rotation, row by row, the point it is about, and where that point goes, mm. */
interface Move {
  turn: Float64Array;
  about: Float64Array;
  to: Float64Array;
}

/**
 * The tree of a body that has moved as a rigid one: the same triangles in the same leaves, boxes drawn anew. Much
 * cheaper than building it again.
 * @param about the point that the motion's rotation is about, mm
 */
export function movedTree(
  tree: DistanceTree,
  motion: Motion,
  about: readonly [number, number, number],
): DistanceTree {
  const move: Move = {
    turn: Float64Array.from(rotationMatrix(motion[3], motion[4], motion[5])),
    about: Float64Array.from(about),
    to: Float64Array.of(about[0] + motion[0], about[1] + motion[1], about[2] + motion[2]),
  };
  const facets = new Float64Array(tree.facets.length);
  for (let at = 0; at < facets.length; at += FACET) {
    for (let corner = at; corner < at + NORMAL; corner += 3) movePoint(move, tree.facets, facets, corner);
    turnVector(move.turn, tree.facets, facets, at + NORMAL);
  }
  const shellPoints = tree.shellPoints.map((point) => {
    const moved = new Float64Array(3);
    movePoint(move, Float64Array.from(point), moved, 0);
    return [moved[0], moved[1], moved[2]] as [number, number, number];
  });
  const { leafStart, firstLeaf } = tree;
  return { facets, boxes: boxesOf(facets, leafStart, firstLeaf), firstLeaf, leafStart, shellPoints };
}

function movePoint({ turn, about, to }: Move, from: Float64Array, into: Float64Array, at: number): void {
  const x = from[at] - about[0];
  const y = from[at + 1] - about[1];
  const z = from[at + 2] - about[2];
  into[at] = turn[0] * x + turn[1] * y + turn[2] * z + to[0];
  into[at + 1] = turn[3] * x + turn[4] * y + turn[5] * z + to[1];
  into[at + 2] = turn[6] * x + turn[7] * y + turn[8] * z + to[2];
}

function turnVector(turn: Float64Array, from: Float64Array, into: Float64Array, at: number): void {
  const x = from[at];
  const y = from[at + 1];
  const z = from[at + 2];
  into[at] = turn[0] * x + turn[1] * y + turn[2] * z;
  into[at + 1] = turn[3] * x + turn[4] * y + turn[5] * z;
  into[at + 2] = turn[6] * x + turn[7] * y + turn[8] * z;
}

import type { Motion } from '../../fit/play/contact.js';
import { FACET, NORMAL } from '../mesh/facets.js';
import { boxesOf, type TriangleTree } from '../mesh/triangleTree.js';
import { rotationMatrix } from '../rotationMatrix.js';

/** A rotation, row by row, and the point it is about and the shift after it, mm. */
interface Move {
  turn: readonly number[];
  about: readonly [number, number, number];
  shift: readonly [number, number, number];
}

/**
 * The tree of a body that has moved as a rigid one: the same triangles in the same leaves, boxes drawn anew. Much
 * cheaper than building it again.
 * @param about the point that the motion's rotation is about, mm
 */
export function movedTree(
  tree: TriangleTree,
  motion: Motion,
  about: readonly [number, number, number],
): TriangleTree {
  const move: Move = {
    turn: rotationMatrix(motion[3], motion[4], motion[5]),
    about,
    shift: [motion[0], motion[1], motion[2]],
  };
  const facets = new Float64Array(tree.facets.length);
  for (let at = 0; at < facets.length; at += FACET) {
    for (let corner = 0; corner < NORMAL; corner += 3) movePoint(move, tree.facets, facets, at + corner);
    turnVector(move.turn, tree.facets, facets, at + NORMAL);
  }
  const positions = new Float64Array(tree.mesh.positions.length);
  for (let at = 0; at < positions.length; at += 3) movePoint(move, tree.mesh.positions, positions, at);
  const shellPoints = tree.shellPoints.map((point) => {
    const moved = new Float64Array(3);
    movePoint(move, Float64Array.from(point), moved, 0);
    return [moved[0], moved[1], moved[2]] as [number, number, number];
  });
  return {
    ...tree,
    mesh: { positions, triangles: tree.mesh.triangles },
    facets,
    boxes: boxesOf(facets, tree.leafStart, tree.firstLeaf),
    shellPoints,
  };
}

function movePoint({ turn, about, shift }: Move, from: Float64Array, into: Float64Array, at: number): void {
  const x = from[at] - about[0];
  const y = from[at + 1] - about[1];
  const z = from[at + 2] - about[2];
  into[at] = turn[0] * x + turn[1] * y + turn[2] * z + about[0] + shift[0];
  into[at + 1] = turn[3] * x + turn[4] * y + turn[5] * z + about[1] + shift[1];
  into[at + 2] = turn[6] * x + turn[7] * y + turn[8] * z + about[2] + shift[2];
}

function turnVector(turn: readonly number[], from: Float64Array, into: Float64Array, at: number): void {
  const [x, y, z] = [from[at], from[at + 1], from[at + 2]];
  into[at] = turn[0] * x + turn[1] * y + turn[2] * z;
  into[at + 1] = turn[3] * x + turn[4] * y + turn[5] * z;
  into[at + 2] = turn[6] * x + turn[7] * y + turn[8] * z;
}

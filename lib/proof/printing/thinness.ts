import type { CommonSpec } from '../../spec/types.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import { thinPieces } from './thinFacets.js';
import { type TallWall, type ThinPlace, tallestWall, thinnestPlace } from './thinPlaces.js';

/** What is thin on a body that a script changed. */
export interface Thinness {
  /** The thinnest wall or slot that does not print; null for none. */
  thinnest: ThinPlace | null;
  /** The wall that is highest for its thickness, among those that are higher than the limit allows; null for none. */
  tallest: TallWall | null;
}

/** What printing asks of walls and slots, as drawn. Lengths in mm. */
export interface ThinnessLimits {
  lineWidth: number;
  layer: number;
  /** Slots that are narrower fuse. */
  gap: number;
  /** Largest height of a free wall in units of its thickness. */
  thinness: number;
}

/** What a file asks for. @param drawn the file as drawn */
export function thinnessLimits({ printer, fit, limits }: CommonSpec): ThinnessLimits {
  return { lineWidth: printer.lineWidth, layer: printer.layer, gap: fit.gap, thinness: limits.thinness };
}

/**
 * Measures walls and slots on the mesh of a body, wherever a script's solids made them: at least one side of each is a
 * triangle that the body did not have before.
 * @param whole for every triangle 1 where the body had it before
 */
export function thinnessOf(tree: TriangleTree, whole: Uint8Array, limits: ThinnessLimits): Thinness {
  const { lineWidth, layer, gap, thinness } = limits;
  const height = tree.boxes[5] - tree.boxes[2];
  const pieces = thinPieces(tree, (triangle) => whole[triangle] === 0, {
    wall: lineWidth,
    slot: gap,
    layer,
    tall: height / thinness,
  });
  const tallest = tallestWall(tree.mesh, pieces);
  return {
    thinnest: thinnestPlace(pieces),
    tallest: tallest && tallest.height > thinness * tallest.thickness ? tallest : null,
  };
}

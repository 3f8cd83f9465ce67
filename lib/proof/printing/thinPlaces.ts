import type { Mesh } from '../../solid/mesh.js';
import { rootOf, singles, unite } from '../mesh/shells.js';
import type { ThinPiece } from './thinFacets.js';

/** The thinnest place of one body, mm. */
export interface ThinPlace {
  between: ThinPiece['between'];
  thickness: number;
  /** What its direction asks for. */
  least: number;
  at: [number, number, number];
}

/** The wall of one body that is highest for its thickness, mm. */
export interface TallWall {
  thickness: number;
  height: number;
  at: [number, number, number];
}

/** A place is thin when this much of it is, mm²: the blunt end of a needle, and less than any line covers. */
const LEAST_AREA = 0.02;
/** Rounding of doubles: a wall of exactly one line holds it. */
const ROUNDING = 1e-9;

/** The thinnest place of all pieces that are too thin to print, the smallest of them added up; null for none. */
export function thinnestPlace(pieces: readonly ThinPiece[]): ThinPlace | null {
  const thin = pieces.filter(({ share }) => share < 1 - ROUNDING).sort((a, b) => a.share - b.share);
  let area = 0;
  for (const piece of thin) {
    area += piece.area;
    if (area < LEAST_AREA) continue;
    const { between, thickness, share, at } = piece;
    return { between, thickness, least: thickness / share, at };
  }
  return null;
}

/**
 * The wall that is highest for its thickness: pieces join in the order of their thickness, and whenever one joins, the
 * height of all that hang together is held against it.
 * @param mesh the body, whose triangles hang together where they share a corner
 */
export function tallestWall(mesh: Mesh, pieces: readonly ThinPiece[]): TallWall | null {
  const walls = pieces.filter(({ between }) => between === 'wall').sort((a, b) => a.thickness - b.thickness);
  const together = singles(mesh.positions.length / 3);
  const grown = new Map<number, { from: number; to: number; area: number }>();
  let tallest: TallWall | null = null;
  for (const { triangle, thickness, area, from, to, at } of walls) {
    const corners = mesh.triangles.subarray(3 * triangle, 3 * triangle + 3);
    const joined = { from, to, area };
    for (const corner of corners) {
      const group = grown.get(rootOf(together, corner));
      grown.delete(rootOf(together, corner));
      if (!group) continue;
      joined.from = Math.min(joined.from, group.from);
      joined.to = Math.max(joined.to, group.to);
      joined.area += group.area;
    }
    for (const corner of corners) unite(together, corners[0], corner);
    grown.set(rootOf(together, corners[0]), joined);
    const height = joined.to - joined.from;
    if (joined.area < LEAST_AREA || !(thickness > 0)) continue;
    if (tallest === null || height / thickness > tallest.height / tallest.thickness)
      tallest = { thickness, height, at };
  }
  return tallest;
}

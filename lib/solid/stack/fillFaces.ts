import { fillPlane } from '../cap.js';
import type { Contour, Point } from './contour.js';
import type { Face } from './stack.js';

/**
 * Fills plane faces, counter-clockwise seen from +z: one after another, each once. Faces with the same outlines at
 * different heights, such as the two end faces of a herringbone gear, are filled alike.
 * @param idsOf vertices of each contour
 * @param positions x, y, z of vertex i at 3i, mm
 * @returns vertex ids, three a triangle, for each face
 */
export function fillFaces(
  faces: readonly Face[],
  idsOf: (contour: Contour) => readonly number[],
  positions: ArrayLike<number>,
): number[][] {
  const filled: { contours: Contour[]; ids: number[]; triangles: number[] }[] = [];
  for (const { outer, holes } of faces) {
    const contours = [outer, ...holes];
    const loops = contours.map(idsOf);
    const ids = loops.flat();
    const like = filled.find((other) => haveSameOutlines(other.contours, contours));
    const triangles = like ? moved(like.triangles, like.ids, ids) : fillPlane(loops, positions);
    filled.push({ contours, ids, triangles });
  }
  return filled.map(({ triangles }) => triangles);
}

function moved(triangles: readonly number[], from: readonly number[], to: readonly number[]): number[] {
  const image = new Map(from.map((id, i) => [id, to[i]]));
  return triangles.map((id) => image.get(id)!);
}

function haveSameOutlines(some: readonly Contour[], others: readonly Contour[]): boolean {
  return some.length === others.length && some.every(({ points }, i) => areSame(points, others[i].points));
}

function areSame(some: readonly Point[], others: readonly Point[]): boolean {
  if (some === others) return true;
  if (some.length !== others.length) return false;
  for (let i = 0; i < some.length; i++)
    if (some[i][0] !== others[i][0] || some[i][1] !== others[i][1]) return false;
  return true;
}

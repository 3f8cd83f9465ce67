import type { Point } from '../../stack/contour.js';
import type { Face } from '../../stack/stack.js';
import { fillOutlines } from '../cap.js';

/**
 * Fills plane faces, counter-clockwise seen from +z. Faces with the same outlines at different heights, such as the
 * two end faces of a herringbone gear, are filled alike.
 * @returns for each face places of points in the row of all its contours' points, outer first, three a triangle
 */
export function fillFaces(faces: readonly Face[]): number[][] {
  const filled: { outlines: (readonly Point[])[]; triangles: number[] }[] = [];
  for (const { outer, holes } of faces) {
    const outlines = [outer, ...holes].map(({ points }) => points);
    const like = filled.find((other) => areSame(other.outlines, outlines));
    filled.push({ outlines, triangles: like ? like.triangles : fillOutlines(outlines) });
  }
  return filled.map(({ triangles }) => triangles);
}

function areSame(some: readonly (readonly Point[])[], others: readonly (readonly Point[])[]): boolean {
  return some.length === others.length && some.every((outline, i) => isSame(outline, others[i]));
}

function isSame(one: readonly Point[], other: readonly Point[]): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++)
    if (one[i][0] !== other[i][0] || one[i][1] !== other[i][1]) return false;
  return true;
}

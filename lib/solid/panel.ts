import { column } from '../stack/column.js';
import { circlePoints, type Point } from '../stack/contour.js';
import { polar } from '../tooth/polar.js';
import type { Mesh } from './mesh.js';
import { stackMesh } from './stack/stackMesh.js';

/** Chords around the sawn hole. */
const CHORDS = 720;

/**
 * A round piece of a panel about the origin with its sawn hole: never a part of a print, only what it is held against.
 * @param hole its diameter, mm; chords stay outside it
 * @param radius of the piece, mm
 * @param from height of its lower side, mm
 */
export function panelPiece(hole: number, radius: number, from: number, thickness: number): Mesh {
  const open = hole / 2 / Math.cos(Math.PI / CHORDS);
  const sawn: Point[] = Array.from({ length: CHORDS }, (_, i) => polar(open, (2 * Math.PI * i) / CHORDS));
  const levels = (outline: readonly Point[]) => [from, from + thickness].map((z) => ({ z, outline }));
  const inner = column(levels(sawn), 'outside');
  const outer = column(levels(circlePoints(radius, 0.1)), 'inside');
  return stackMesh({
    walls: [...outer.walls, ...inner.walls],
    faces: [
      { looks: 'down', outer: outer.first, holes: [inner.first] },
      { looks: 'up', outer: outer.last, holes: [inner.last] },
    ],
  });
}

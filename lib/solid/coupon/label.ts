import { glyph, strokeWidth } from '../features/glyphs.js';
import { atHeight, contourAt, type Point } from '../stack/contour.js';
import type { Face, Feature, Wall } from '../stack/stack.js';

/** A line of raised text: words, the middle of its foot line, height of a capital and of the relief, mm. */
export interface Label {
  words: string;
  middle: Point;
  size: number;
  height: number;
}

/** Letters that stand on a face at height `z`. @param lineWidth of the printer, mm: no stroke is narrower */
export function raisedLabel({ words, middle, size, height }: Label, z: number, lineWidth: number): Feature {
  const glyphs = [...words].map((letter) => glyph(letter, size, strokeWidth(size, lineWidth)));
  const length = glyphs.reduce((sum, { advance }) => sum + advance, 0);
  const walls: Wall[] = [];
  const faces: Face[] = [];
  const top = [];
  let along = middle[0] - length / 2;
  for (const { pieces, advance } of glyphs) {
    const put = (points: readonly Point[]) => points.map(([x, y]): Point => [x + along, y + middle[1]]);
    for (const { outer, holes } of pieces) {
      const edge = contourAt(put(outer), z);
      const far = atHeight(edge, z + height);
      walls.push({ from: edge, to: far, solid: 'inside' });
      const islands = holes.map((points) => {
        const island = contourAt(put(points), z);
        const above = atHeight(island, z + height);
        walls.push({ from: island, to: above, solid: 'outside' });
        faces.push({ looks: 'up', outer: island, holes: [] });
        return above;
      });
      faces.push({ looks: 'up', outer: far, holes: islands });
      top.push(edge);
    }
    along += advance;
  }
  return { holes: { top }, walls, faces };
}

import { type Glyph, glyph, strokeWidth } from '../../features/letters/glyphs.js';
import { standing } from '../../features/letters/lettering.js';
import type { Point } from '../../stack/contour.js';
import type { Feature } from '../../stack/stack.js';

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
  let along = middle[0] - length / 2;
  const placed = glyphs.flatMap(({ pieces, advance }): Glyph['pieces'] => {
    const put = (points: readonly Point[]) => points.map(([x, y]): Point => [x + along, y + middle[1]]);
    const there = pieces.map(({ outer, holes }) => ({ outer: put(outer), holes: holes.map(put) }));
    along += advance;
    return there;
  });
  return standing(placed, z, { style: 'raised', height });
}

// The whole of @jscad/modeling would take a good part of the time in which the command starts.
import text from '@jscad/modeling/src/text/index.js';
import { type Point, signedArea } from '../../stack/contour.js';
import { contains } from '../../stack/room.js';
import { strokeOutlines } from './strokeOutlines.js';

/** One connected piece of a letter: its outline and the holes in it, each counter-clockwise, mm. */
export interface GlyphPiece {
  outer: Point[];
  holes: Point[][];
}

/** A letter from its left edge at x = 0 and its foot at y = 0, and how far the next one is from it, mm. */
export interface Glyph {
  pieces: GlyphPiece[];
  advance: number;
}

/** Width of a stroke in heights of a capital letter. */
const STROKE = 0.15;
/** The library's `height` is that of lower-case letters, 14 units of the font; capitals have 21. */
const CAPITAL = 14 / 21;

/** Width of the strokes of letters, mm: at least a line of the printer. */
export function strokeWidth(size: number, lineWidth: number): number {
  return Math.max(STROKE * size, lineWidth);
}

/** Letters traced already, by letter, size and pen: whoever looks for room lays out the same ones again and again. */
const traced = new Map<string, Glyph>();
/** No more are kept; enough for all sizes that one text is tried in. */
const MOST_TRACED = 1000;

/** As `traceGlyph`; the same object for the same letter, never to be changed. */
export function glyph(letter: string, size: number, width: number): Glyph {
  const key = `${letter} ${size} ${width}`;
  const known = traced.get(key);
  if (known) return known;
  if (traced.size >= MOST_TRACED) traced.clear();
  const fresh = traceGlyph(letter, size, width);
  traced.set(key, fresh);
  return fresh;
}

/**
 * One letter of the single-line font (Hershey's simplex) that @jscad/modeling brings, drawn with a round pen.
 * @param size height of a capital letter, mm
 * @param width of the pen, mm
 */
function traceGlyph(letter: string, size: number, width: number): Glyph {
  const char = text.vectorChar({ height: CAPITAL * size }, letter);
  const outlines = strokeOutlines(char.segments as unknown as Point[][], width);
  const pieces = outlines.filter((o) => signedArea(o) > 0).map((outer): GlyphPiece => ({ outer, holes: [] }));
  for (const hole of outlines)
    if (signedArea(hole) < 0)
      pieces.find(({ outer }) => contains(outer, hole[0]))?.holes.push(hole.toReversed());
  return { pieces, advance: char.width };
}

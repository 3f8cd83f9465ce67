import { refuse } from '../../refusal.js';
import { floorThousandth } from '../../spec/nearest.js';
import { featureRanges } from '../../spec/ranges.js';
import { atHeight, contourAt, type Point, placedPoints } from '../../stack/contour.js';
import type { Face, Feature, Wall } from '../../stack/stack.js';
import type { TextContext } from '../feature.js';
import { type Frame, inFrame } from '../frame.js';
import { filled, type Text } from '../text.js';
import { type Glyph, type GlyphPiece, glyph, strokeWidth } from './glyphs.js';

/** Where letters may stand: a ring about the axis, or a whole disc with `inner` 0. Radii in mm. */
export interface TextRoom {
  /** Radius of what is open or stands in the middle; 0 for nothing. */
  inner: number;
  /** Radius of the edge. */
  outer: number;
}

/** Letters reach this far below their foot (g, j, y …), in heights of a capital. Hershey's simplex font: 7 of 21. */
const DESCENT = 7 / 21;
/** Letters along an arc leave at least this much of the circle free. */
const MOST_ARC = 1.9 * Math.PI;
/** Strokes wider than this share of the height run together. */
const WIDEST_STROKE = 0.24;

/**
 * Letters on a face at height `z`: straight across a whole disc, else upright along an arc through the middle of the
 * room, its top to the outside.
 * @throws Refusal with the largest size that fits
 */
export function lettering(text: Text, z: number, room: TextRoom, context: TextContext): Feature {
  const content = filled(text.content, context.words);
  const { part, lineWidth } = context;
  const least = Math.max(featureRanges.letters[0], lineWidth / WIDEST_STROKE);
  const rule = `strokes of one line, ${lineWidth} mm, run together in letters lower than ${ceilTenth(least)} mm`;
  if (text.size < least - 1e-9) refuse('too-small', `${part}.text.size`, text.size, rule, [ceilTenth(least)]);
  const pieces = laidOut(content, text.size, room, context);
  if (pieces)
    return standing(
      pieces.map((piece) => placedInFrame(piece, context.frame)),
      z,
      text,
    );
  let [fits, misses] = [0, text.size];
  for (let step = 0; step < 12; step++) {
    const middle = (fits + misses) / 2;
    if (laidOut(content, middle, room, context)) fits = middle;
    else misses = middle;
  }
  const largest = floorThousandth(Math.floor(fits * 20) / 20);
  const none = `finds no room on this face in letters of ${ceilTenth(least)} mm`;
  if (largest < least) refuse('no-room', `${part}.text`, text.content, none, ['none']);
  const smaller = `finds no room: at most ${largest} mm on this face`;
  refuse('no-room', `${part}.text.size`, text.size, smaller, [largest]);
}

/** Pieces of all letters where they stand on the bed; null where they find no room. */
function laidOut(
  content: string,
  size: number,
  { inner, outer }: TextRoom,
  { lineWidth, wall }: TextContext,
): GlyphPiece[] | null {
  const width = strokeWidth(size, lineWidth);
  const known = new Map<string, Glyph>();
  const glyphs = [...content].map((letter) => {
    const drawn = known.get(letter) ?? glyph(letter, size, width);
    known.set(letter, drawn);
    return drawn;
  });
  const length = glyphs.reduce((sum, { advance }) => sum + advance, 0);
  const descends = glyphs.some(({ pieces }) => pieces.some((p) => p.outer.some(([, y]) => y < -width)));
  const foot = -(size - (descends ? DESCENT * size : 0)) / 2;
  // With something in the middle the text runs round it; its letters are set along the foot line's circle.
  const line = inner > 0 ? (inner + outer) / 2 + foot : 0;
  if (inner > 0 && (line <= 0 || length / line > MOST_ARC)) return null;
  let along = -length / 2;
  const placed = glyphs.flatMap(({ pieces, advance }) => {
    const middle = along + advance / 2;
    along += advance;
    const put = (points: readonly Point[]): Point[] =>
      inner > 0
        ? placedPoints(placedPoints(points, 0, [-advance / 2, line]), -middle / line, [0, 0])
        : placedPoints(points, 0, [middle - advance / 2, foot]);
    return pieces.map((piece) => ({ outer: put(piece.outer), holes: piece.holes.map(put) }));
  });
  const fits = placed.every(({ outer: points }) =>
    points.every(([x, y]) => {
      const radius = Math.hypot(x, y);
      return radius <= outer - wall && (inner === 0 || radius >= inner + wall);
    }),
  );
  return fits ? placed : null;
}

function placedInFrame({ outer, holes }: GlyphPiece, frame: Frame): GlyphPiece {
  return { outer: inFrame(outer, frame), holes: holes.map((hole) => inFrame(hole, frame)) };
}

/** Letters as bodies on the face, or as pits in it; the insides of an O stay at the height of the face. */
export function standing(
  pieces: readonly GlyphPiece[],
  z: number,
  { style, height }: Pick<Text, 'style' | 'height'>,
): Feature {
  const walls: Wall[] = [];
  const faces: Face[] = [];
  const sunk = style === 'sunk';
  const end = sunk ? z - height : z + height;
  const top = pieces.map(({ outer, holes }) => {
    const edge = contourAt(outer, z);
    const far = atHeight(edge, end);
    walls.push({ from: edge, to: far, solid: sunk ? 'outside' : 'inside' });
    const inner = holes.map((points) => {
      const island = contourAt(points, z);
      const below = atHeight(island, end);
      walls.push({ from: island, to: below, solid: sunk ? 'inside' : 'outside' });
      faces.push({ looks: 'up', outer: island, holes: [] });
      return below;
    });
    faces.push({ looks: 'up', outer: far, holes: inner });
    return edge;
  });
  return { holes: { top }, walls, faces };
}

function ceilTenth(length: number): number {
  return Math.ceil(length * 10 - 1e-9) / 10;
}

import { describe, expect, it } from 'vitest';
import { glyph } from '../../lib/features/letters/glyphs.js';
import { lettering, type TextRoom } from '../../lib/features/letters/lettering.js';
import { Refusal } from '../../lib/refusal.js';
import { circlePoints, contourAt, type Point, signedArea } from '../../lib/stack/contour.js';
import { distanceBetween, roomProblems } from '../../lib/stack/room.js';
import { refusalOf } from '../refusalOf.js';

const context = {
  part: 'ring',
  words: { gap: '0.25', name: 'x' },
  lineWidth: 0.45,
  wall: 0.45,
  frame: { rotation: 0, mirrored: false },
};
const text = (content: string, size: number) => ({ content, size, style: 'sunk' as const, height: 0.6 });
const put = (content: string, size: number, room: TextRoom) =>
  lettering(text(content, size), 5, room, context).holes.top!;

describe('letters', () => {
  it('of all of ASCII are simple outlines around their strokes, holes within', () => {
    for (let code = 33; code < 127; code++)
      for (const [size, width] of [
        [5, 0.75],
        [2, 0.48],
      ]) {
        const { pieces } = glyph(String.fromCharCode(code), size, width);
        expect(pieces.length, String.fromCharCode(code)).toBeGreaterThan(0);
        for (const { outer, holes } of pieces) {
          expect(signedArea(outer)).toBeGreaterThan(0);
          expect(
            roomProblems(
              contourAt(outer, 0),
              holes.map((hole) => contourAt(hole, 0)),
              1e-3,
            ),
          ).toEqual([]);
          expectSimple(outer);
        }
      }
  });

  // A round-ended stroke of length l and width w covers l w + π w² / 4; a capital I is one upright stroke of its height.
  it('are as high and as wide as asked', () => {
    const [{ outer }] = glyph('I', 6, 0.9).pieces;
    const heights = outer.map(([, y]) => y);
    expect(Math.max(...heights)).toBeCloseTo(6.45, 1);
    expect(Math.min(...heights)).toBeCloseTo(-0.45, 1);
    expect(signedArea(outer)).toBeCloseTo(6 * 0.9 + (Math.PI * 0.9 ** 2) / 4, 1);
    // An O has one hole, a B two.
    expect(glyph('O', 6, 0.9).pieces[0].holes).toHaveLength(1);
    expect(glyph('B', 6, 0.9).pieces[0].holes).toHaveLength(2);
  });

  it('keep to the face, and to the right way round', () => {
    const arc = put('gap {gap}', 3, { inner: 30, outer: 36 });
    const rim = (radius: number) => contourAt(circlePoints(radius, 1e-4), 5);
    expect(roomProblems(rim(36), [rim(30), ...arc], 0.44)).toEqual([]);
    const x = arc.map(({ points }) => points.reduce((sum, [px]) => sum + px, 0) / points.length);
    expect(x.slice().sort((a, b) => a - b)).toEqual(x);
    const straight = put('ab', 3, { inner: 0, outer: 10 });
    expect(roomProblems(rim(10), straight, 0.44)).toEqual([]);
  });

  it('are refused with the largest size that fits', () => {
    const room = { inner: 30, outer: 36 };
    const refused = (content: string, size: number) => refusalOf(() => put(content, size, room));
    const { parameter, nearest } = refused('gap {gap}', 8);
    expect(parameter).toBe('ring.text.size');
    expect(put('gap {gap}', nearest[0] as number, room).length).toBeGreaterThan(5);
    expect(() => put('gap {gap}', (nearest[0] as number) + 0.2, room)).toThrow(Refusal);
    expect(refused('gap', 1).nearest).toEqual([2]);
    expect(
      refused('far too long a text for a ring of this size to bear in any letters '.repeat(4), 2),
    ).toMatchObject({
      parameter: 'ring.text',
      nearest: ['none'],
    });
  });
});

/** No two edges that are not neighbours meet. */
function expectSimple(outline: readonly Point[]): void {
  for (let i = 0; i < outline.length; i += 3) {
    const own = [outline[i], outline[(i + 1) % outline.length]];
    const rest = Array.from({ length: outline.length - 3 }, (_, k) => outline[(i + 3 + k) % outline.length]);
    // The rest as an open line, there and back.
    const line = [...rest.slice(0, -1), ...rest.slice(0, -1).reverse()];
    expect(distanceBetween(own, line, 1)).toBeGreaterThan(0);
  }
}

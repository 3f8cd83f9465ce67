import { refuse } from '../refusal.js';

/** Size of a picture where none is asked for, pixels. */
export const usualSize = { width: 1200, height: 900 };

/** Least and largest number of pixels either way. */
export const LEAST_SIDE = 16;
export const MOST_SIDE = 4096;

/**
 * The size of a picture as it is typed: `1200x900`.
 * @returns width and height, pixels
 * @throws Refusal for the parameter `picture-size`
 */
export function readPictureSize(text: string): { width: number; height: number } {
  const [, width, height] = /^\s*(\d{1,5})\s*[x×]\s*(\d{1,5})\s*$/i.exec(text) ?? [];
  const rule = 'must be width x height in pixels';
  if (width === undefined)
    refuse('wrong-form', 'picture-size', text, rule, [`${usualSize.width}x${usualSize.height}`]);
  const [wide, high] = [Number(width), Number(height)];
  if (![wide, high].every((side) => side >= LEAST_SIDE && side <= MOST_SIDE)) {
    const within = [wide, high].map((side) => Math.min(MOST_SIDE, Math.max(LEAST_SIDE, side)));
    refuse('out-of-range', 'picture-size', text, `must be ${LEAST_SIDE} to ${MOST_SIDE} pixels either way`, [
      within.join('x'),
    ]);
  }
  return { width: wide, height: high };
}

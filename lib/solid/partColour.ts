import { kindOf } from './partKinds.js';

/** Red, green and blue, each 0 … 1 (sRGB). */
export type Colour = readonly [red: number, green: number, blue: number];

/**
 * Colours that people with any common form of colour blindness tell apart, and that differ in lightness too.
 * Source: M. Okabe and K. Ito, Color Universal Design (2008), from memory; the ring's green is lightened for shading.
 */
const COLOURS: Record<string, Colour> = {
  sun: [0.9, 0.62, 0],
  pinion: [0.9, 0.62, 0],
  gear: [0.9, 0.62, 0],
  planet: [0.34, 0.71, 0.91],
  wheel: [0.34, 0.71, 0.91],
  bar: [0.34, 0.71, 0.91],
  gauge: [0.34, 0.71, 0.91],
  ring: [0.78, 0.8, 0.76],
  frame: [0.78, 0.8, 0.76],
  carrier: [0.84, 0.37, 0],
  'clamp-ring': [0.8, 0.47, 0.65],
};

/** For parts of a script's own making. */
const OTHER: Colour = [0, 0.62, 0.45];

/**
 * Colour of a part in previews, by its kind; it says nothing about what the part is printed in.
 * @param name of the part: `sun`, `planet-1`, …
 */
export function partColour(name: string): Colour {
  return COLOURS[kindOf(name)] ?? OTHER;
}

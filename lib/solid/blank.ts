import { atHeight, type Contour, circlePoints, contourAt, type Point } from '../stack/contour.js';
import type { Feature } from '../stack/stack.js';

/** What a gear body has besides its teeth, in the frame of the right-handed gear. Lengths in mm. */
export interface Blank {
  /** Outer edges of a ring's end faces; none for an external gear, whose end faces end at its teeth. */
  rim?: { bottom: Contour; top: Contour };
  /** Walls and faces, with the holes that they open in the end faces; a ring's outer wall among them. */
  feature: Feature;
}

/** What bounds a gear body on the side away from its teeth. Lengths in mm. */
export type Wall =
  /** A bore through an external gear, its outline counter-clockwise; empty for a solid gear. */
  | { bore: readonly Point[] }
  /** The outer radius of a ring. */
  | { rimRadius: number }
  | Blank;

/**
 * The blank that a plain wall stands for.
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function blankOf(wall: Wall, faceWidth: number, tolerance: number): Blank {
  if ('feature' in wall) return wall;
  if ('rimRadius' in wall) return rimBlank(circlePoints(wall.rimRadius, tolerance), faceWidth);
  return { feature: wall.bore.length ? throughHole(wall.bore, faceWidth) : noFeature };
}

/** Nothing. */
export const noFeature: Feature<never> = { holes: {}, walls: [], faces: [] };

/** A ring with an upright outer wall. */
export function rimBlank(outline: readonly Point[], faceWidth: number): Blank {
  const bottom = contourAt(outline, 0);
  const top = atHeight(bottom, faceWidth);
  return {
    rim: { bottom, top },
    feature: { holes: {}, walls: [{ from: bottom, to: top, solid: 'inside' }], faces: [] },
  };
}

/** A hole of one outline from end face to end face. */
export function throughHole(outline: readonly Point[], faceWidth: number): Feature {
  const bottom = contourAt(outline, 0);
  const top = atHeight(bottom, faceWidth);
  return {
    holes: { bottom: [bottom], top: [top] },
    walls: [{ from: bottom, to: top, solid: 'outside' }],
    faces: [],
  };
}

import { radians } from '../tooth/gear.js';
import { MOST_BEVEL_SHARE } from './ranges.js';

/**
 * How far bevels and lips may reach across the teeth before their cones, as high as `MOST_BEVEL_SHARE` of the face, come too
 * near to those of the other end face, mm.
 * @param faceWidth mm
 * @param bevelAngle degrees from the end face
 */
export function deepestByFace(faceWidth: number, bevelAngle: number): number {
  return (MOST_BEVEL_SHARE * faceWidth) / Math.tan(radians(bevelAngle));
}

/**
 * Lips lie over bevels this many times as deep as others: so deep that play, which lets planets drop away from the ring, does
 * not let them past. Common practice, no source.
 */
export const BEVEL_FOR_LIPS = 1.4;

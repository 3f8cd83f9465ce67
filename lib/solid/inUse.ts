import type { Motion } from '../fit/play/contact.js';

/** How a part gets from the bed to where it is used: a rigid motion about a point. Lengths in mm, angles in radians. */
export interface InUse {
  motion: Motion;
  about: readonly [number, number, number];
}

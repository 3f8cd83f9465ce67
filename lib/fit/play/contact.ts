/**
 * A small rigid motion of one part: shift x, y, z (mm), then rotation vector x, y, z (radians), about the part's
 * centre. A point r moves by u + ω × (r − centre).
 */
export type Motion = readonly [number, number, number, number, number, number];

/** The motion of a part that is held. */
export const AT_REST: Motion = [0, 0, 0, 0, 0, 0];

/** What keeps parts from moving. A new feature (a lip, a pin) adds its own word and its own contacts. */
export type Feature = 'flanks' | 'tips' | 'neighbours' | 'lips' | 'pins' | 'plates' | 'posts';

/** How far two parts are from touching at one contact, and how that changes with their motions. */
export interface Reading {
  /** mm; 0 or less where they touch. */
  gap: number;
  /** Change of the gap for each number of the first and of the second part's motion. */
  slopes: readonly [Motion, Motion];
}

/** One place at which two parts would touch. */
export interface Contact {
  /** Names of the two parts. */
  between: readonly [string, string];
  feature: Feature;
  /** Height of the place, mm. */
  z: number;
  /** True where the gap bends gently with motion; false where it has corners, so that every slope found is kept. */
  smooth: boolean;
  read(first: Motion, second: Motion): Reading;
}

/**
 * A small rigid motion of one part: shift x, y, z (mm), then rotation vector x, y, z (radians), about the part's
 * centre. A point r moves by u + ω × (r − centre).
 */
export type Motion = readonly [number, number, number, number, number, number];

/** What keeps parts from moving. A new feature (a lip, a pin) adds its own word and its own contacts. */
export type Feature = 'flanks' | 'tips' | 'neighbours' | 'lips' | 'pins' | 'plates' | 'posts';

/**
 * How far two parts are from touching at one place, and how that changes with their motions. Data and a function of the
 * module, no closure: what is compiled for a closure is lost with the set it was made for.
 */
export interface Contact<Place = unknown> {
  /** Names of the two parts. */
  between: readonly [string, string];
  feature: Feature;
  /** Height of the place, mm. */
  z: number;
  /** True where the gap bends gently with motion; false where it has corners, so that every slope found is kept. */
  smooth: boolean;
  /** What `read` has to know of the place. */
  place: Place;
  /**
   * The gap once its parts have moved, mm; 0 or less where they touch. This is the hot path: gaps are read a million
   * times for a set, so nothing is made on the way.
   * @param motions the numbers of many parts' motions, one after the other
   * @param first where the six numbers of the first part begin
   * @param second where those of the second part begin
   * @param slopes takes the change of the gap for each number of the first, then of the second part's motion [not
   * worked out]
   */
  read(place: Place, motions: Float64Array, first: number, second: number, slopes?: Float64Array): number;
}

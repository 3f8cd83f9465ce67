import { radians } from '../tooth/gear.js';

/**
 * The angle of which every angle between two planets must be a whole multiple.
 * @returns degrees, 360 / (z_sun + z_ring)
 * Source: assembly condition of simple planetary sets (AGMA 6123, handbooks; from memory, and it follows from
 * the phases of the two meshes).
 */
export function assemblyStep(sunTeeth: number, ringTeeth: number): number {
  return 360 / (sunTeeth + ringTeeth);
}

/** True when `count` planets fit at equal angles: (z_sun + z_ring) / count is whole. Source as `assemblyStep`. */
export function allowsEqualSpacing(sunTeeth: number, ringTeeth: number, count: number): boolean {
  return (sunTeeth + ringTeeth) % count === 0;
}

/**
 * Places for `count` planets nearest to equal angles, the first at 0.
 * @returns degrees, ascending; multiples of the assembly step, exactly equal angles when the teeth allow it.
 *   A place midway between two steps takes the larger one.
 */
export function planetPlaces(sunTeeth: number, ringTeeth: number, count: number): number[] {
  const teeth = sunTeeth + ringTeeth;
  return Array.from({ length: count }, (_, index) => (Math.round((index * teeth) / count) * 360) / teeth);
}

/**
 * The least angle between the axes of neighbouring planets.
 * @param places directions of the planets' axes, degrees, in any order
 * @returns degrees; a whole turn for a single planet
 */
export function leastAngle(places: readonly number[]): number {
  return Math.min(...anglesBetween(places));
}

/** The angles from each planet's axis to the next one's around the circle, degrees, from the least direction on. */
export function anglesBetween(places: readonly number[]): number[] {
  const sorted = places.map((place) => ((place % 360) + 360) % 360).sort((a, b) => a - b);
  return sorted.map((place, i) => (sorted[i + 1] ?? sorted[0] + 360) - place);
}

/**
 * How far the planet farthest from its equal place departs from it, the first planet standing at its own.
 * @returns degrees; 0 when all are equally spaced
 */
export function departure(places: readonly number[]): number {
  const off = places.map((place, i) => Math.abs(place - places[0] - (360 * i) / places.length));
  return Math.max(0, ...off);
}

/**
 * How far the planets' common centre of mass lies off the axis, as a share of the centre distance: what a turning
 * carrier throws around.
 * @param places directions of the planets' axes, degrees
 * @returns 0 (balanced) … 1
 * Source: plain statics, the mean of the unit vectors to equal masses.
 */
export function unbalance(places: readonly number[]): number {
  const sum = (f: (angle: number) => number) => places.reduce((all, at) => all + f(radians(at)), 0);
  const share = Math.hypot(sum(Math.cos), sum(Math.sin)) / places.length;
  return share < ROUNDING ? 0 : share;
}

/** Shares below this are the rounding of doubles. */
const ROUNDING = 1e-12;

/**
 * Least distance between the tip circles of two neighbouring planets, each pair at its own angle.
 * @param places directions of the planets' axes, degrees
 * @param centreDistance sun to planet, mm
 * @param planetTipRadius mm
 * @returns mm, negative when they overlap; +∞ for a single planet
 * Source: as `neighbourClearance`.
 */
export function leastClearance(
  places: readonly number[],
  centreDistance: number,
  planetTipRadius: number,
): number {
  if (places.length < 2) return Number.POSITIVE_INFINITY;
  return 2 * centreDistance * Math.sin(radians(leastAngle(places)) / 2) - 2 * planetTipRadius;
}

/**
 * Distance between the tip circles of two equally spaced neighbouring planets.
 * @param centreDistance sun to planet, mm
 * @param planetTipRadius mm
 * @returns mm, negative when they overlap; +∞ for a single planet
 * Source: neighbour condition of handbooks, 2 a sin(π/N) − d_a.
 */
export function neighbourClearance(centreDistance: number, count: number, planetTipRadius: number): number {
  if (count < 2) return Number.POSITIVE_INFINITY;
  return 2 * centreDistance * Math.sin(Math.PI / count) - 2 * planetTipRadius;
}

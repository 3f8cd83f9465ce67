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

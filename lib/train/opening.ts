import { radians } from '../tooth/gear.js';

/** The sizes that the opening between planets follows from, mm. */
export interface OpeningSizes {
  /** Sun to planet. */
  centreDistance: number;
  planetTipRadius: number;
  ringTipRadius: number;
  sunTipRadius: number;
}

/**
 * The widest opening between neighbouring planets, for an axis-parallel view of a set whose ring is away.
 * @param places directions of the planets' axes, degrees, in any order
 * @param edgeLength length of the straight edge, mm [long enough to rest on both planets]
 * @returns `arc`: the widest angle at the set's axis, degrees, that lies between the tip circles of two
 *   neighbouring planets, 0 when tip circles overlap as seen from the axis. `drop`: a straight edge is moved inward
 *   along the middle of that opening, square to it, until it rests on the tip circles of both planets (their
 *   outer common tangent, when it is long enough) or on the sun's; drop is how far inside the ring's tip circle
 *   it comes to lie, mm, 0 when it stays outside.
 * Source: plain geometry of circles, our own definition.
 */
export function opening(
  places: readonly number[],
  sizes: OpeningSizes,
  edgeLength = Number.POSITIVE_INFINITY,
): { arc: number; drop: number } {
  const { centreDistance, planetTipRadius, ringTipRadius, sunTipRadius } = sizes;
  const between = widestGap(places);
  const covered = (2 * Math.asin(Math.min(1, planetTipRadius / centreDistance)) * 180) / Math.PI;
  const half = radians(between / 2);
  // How far along the edge, from its middle, the planets' centres lie; a shorter edge rests on its ends.
  const inside = Math.max(0, centreDistance * Math.sin(half) - edgeLength / 2);
  // An edge that fits between the planets falls through to the sun.
  const onPlanets =
    inside < planetTipRadius
      ? centreDistance * Math.cos(half) + Math.sqrt(planetTipRadius ** 2 - inside ** 2)
      : Number.NEGATIVE_INFINITY;
  const rest = Math.max(onPlanets, sunTipRadius);
  return { arc: Math.max(0, between - covered), drop: Math.max(0, ringTipRadius - rest) };
}

/** The widest angle between the axes of neighbouring planets, degrees; a whole turn for one planet. */
function widestGap(places: readonly number[]): number {
  const sorted = places.map((place) => ((place % 360) + 360) % 360).sort((a, b) => a - b);
  return Math.max(...sorted.map((place, i) => (sorted[i + 1] ?? sorted[0] + 360) - place));
}

import { polar } from '../../tooth/polar.js';

/** The room between two neighbouring planets, seen from the set's axis. Lengths in mm, angles in radians. */
export interface Opening {
  /** Direction of its middle, and half the angle between the axes of the two planets. */
  middle: number;
  half: number;
  centreDistance: number;
  /** Tip circles of planets, sun and ring. */
  planetTip: number;
  sunTip: number;
  ringTip: number;
}

/** Stations along a side of a post. */
const STATIONS = 48;

/**
 * The outline of the post that fills an opening but for the gap to planets, sun and ring: two arcs about the planets'
 * axes, cut by arcs about the set's. Where the planets leave a neck narrower than `wall`, the larger side of it is
 * taken.
 * @returns points counter-clockwise, always as many; null where nothing as wide as `wall` both ways fits
 */
export function postOutline(opening: Opening, gap: number, wall: number): [number, number][] | null {
  const { middle, half, centreDistance, planetTip, sunTip, ringTip } = opening;
  const reach = planetTip + gap;
  const [inner, outer] = [sunTip + gap, ringTip - gap];
  if (!(outer - inner >= wall)) return null;
  const halfAngle = (radius: number) => half - shadow(radius, centreDistance, reach);
  const wide = (radius: number) => 2 * radius * Math.sin(halfAngle(radius)) >= wall;
  const radii = Array.from(
    { length: 4 * STATIONS + 1 },
    (_, i) => inner + ((outer - inner) * i) / (4 * STATIONS),
  );
  const best = longestRun(radii, wide);
  if (!best || best[1] - best[0] < wall) return null;
  // Evenly about the planet's axis, so that chords stay as near to its circle everywhere.
  const seen = (radius: number) =>
    Math.acos((centreDistance ** 2 + reach ** 2 - radius ** 2) / (2 * centreDistance * reach));
  const [from, to] = best.map(seen);
  const at = Array.from({ length: STATIONS + 1 }, (_, i) => {
    if (i === 0 || i === STATIONS) return best[i === 0 ? 0 : 1];
    const angle = from + ((to - from) * i) / STATIONS;
    return Math.sqrt(centreDistance ** 2 + reach ** 2 - 2 * centreDistance * reach * Math.cos(angle));
  });
  const side = (sign: 1 | -1) => at.map((radius) => polar(radius, middle + sign * halfAngle(radius)));
  const arc = (radius: number) =>
    Array.from({ length: STATIONS - 1 }, (_, i) =>
      polar(radius, middle + halfAngle(radius) * (-1 + (2 * (i + 1)) / STATIONS)),
    );
  return [...side(-1), ...arc(best[1]), ...side(1).reverse(), ...arc(best[0]).reverse()];
}

/** Half the angle, seen from the set's axis, that a circle about a planet's axis covers at a radius. */
export function shadow(radius: number, centreDistance: number, reach: number): number {
  const cosine = (radius ** 2 + centreDistance ** 2 - reach ** 2) / (2 * radius * centreDistance);
  return cosine >= 1 ? 0 : Math.acos(Math.max(-1, cosine));
}

function longestRun(radii: readonly number[], fits: (radius: number) => boolean): [number, number] | null {
  let best: [number, number] | null = null;
  let from: number | null = null;
  radii.forEach((radius, i) => {
    if (fits(radius)) from ??= radius;
    const ends = from !== null && (!fits(radius) || i === radii.length - 1);
    if (!ends) return;
    const to = fits(radius) ? radius : radii[i - 1];
    if (!best || to - from! > best[1] - best[0]) best = [from!, to];
    from = null;
  });
  return best;
}

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

/** The post of an opening. Lengths in mm. */
export interface Post {
  /** Distances of its inner and outer edge from the set's axis. */
  from: number;
  to: number;
  body: [number, number][];
  /** Its outline on the bed, as many points: narrower by `cut` all round. */
  foot: [number, number][];
  /** How far its edges are cut back on the bed, at 45°. */
  cut: number;
}

/** Stations along a side of a post. */
const STATIONS = 48;
/** A foot keeps this share of the least width of its post. */
const LEAST_FOOT = 0.25;

/**
 * The post that fills an opening but for the gap to planets, sun and ring: two arcs about the planets' axes, cut by
 * arcs about the set's. Where the planets leave a neck narrower than `wall`, the larger side of it is taken.
 * @param wall least width of it both ways, mm
 * @param cut how far its edges are cut back on the bed, mm; less where little would be left of its foot
 * @returns outlines counter-clockwise, always of as many points; null where nothing so wide fits
 */
export function postIn(opening: Opening, gap: number, wall: number, cut: number): Post | null {
  const { sunTip, ringTip, planetTip } = opening;
  const reach = planetTip + gap;
  const [inner, outer] = [sunTip + gap, ringTip - gap];
  if (!(outer - inner >= wall)) return null;
  const radii = spread(inner, outer, 4 * STATIONS);
  const run = longestRun(radii, (radius) => widthAt(opening, reach, radius) >= wall);
  if (!run || run[1] - run[0] < wall) return null;
  const [from, to] = run;
  const body = outline(opening, reach, run);
  for (let less = Math.min(cut, wall / 4); less > 0; less = less > wall / 64 ? less / 2 : 0) {
    const within: [number, number] = [from + less, to - less];
    const thin = spread(...within, STATIONS).some(
      (radius) => widthAt(opening, reach + less, radius) < LEAST_FOOT * wall,
    );
    if (!thin) return { from, to, body, foot: outline(opening, reach + less, within), cut: less };
  }
  return { from, to, body, foot: body, cut: 0 };
}

function spread(from: number, to: number, count: number): number[] {
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

function halfAngleAt({ half, centreDistance }: Opening, reach: number, radius: number): number {
  return half - shadow(radius, centreDistance, reach);
}

/** Width of what circles of radius `reach` about both planets' axes leave at a radius about the set's, mm. */
function widthAt(opening: Opening, reach: number, radius: number): number {
  return 2 * radius * Math.sin(halfAngleAt(opening, reach, radius));
}

/**
 * Two arcs about the planets' axes from one radius about the set's axis to another, joined by arcs about that. Chords of
 * the arcs that face planets and sun touch them from outside, so that none comes nearer than the gap.
 */
function outline(opening: Opening, exact: number, [inner, to]: [number, number]): [number, number][] {
  const { middle, half, centreDistance } = opening;
  const from = inner / Math.cos(half / STATIONS);
  const seen = (radius: number, reach: number) => {
    const cosine = (centreDistance ** 2 + reach ** 2 - radius ** 2) / (2 * centreDistance * reach);
    return Math.acos(Math.min(1, Math.max(-1, cosine)));
  };
  const reach = exact / Math.cos((seen(to, exact) - seen(from, exact)) / STATIONS / 2);
  const halfAngle = (radius: number) => halfAngleAt(opening, reach, radius);
  // Evenly about the planet's axis, so that chords stay as near to its circle everywhere.
  const at = spread(seen(from, reach), seen(to, reach), STATIONS).map((angle, i) => {
    if (i === 0 || i === STATIONS) return i === 0 ? from : to;
    return Math.sqrt(centreDistance ** 2 + reach ** 2 - 2 * centreDistance * reach * Math.cos(angle));
  });
  const side = (sign: 1 | -1) => at.map((radius) => polar(radius, middle + sign * halfAngle(radius)));
  const arc = (radius: number) =>
    Array.from({ length: STATIONS - 1 }, (_, i) =>
      polar(radius, middle + halfAngle(radius) * (-1 + (2 * (i + 1)) / STATIONS)),
    );
  return [...side(-1), ...arc(to), ...side(1).reverse(), ...arc(from).reverse()];
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

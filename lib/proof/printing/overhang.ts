import type { Mesh } from '../../solid/mesh.js';
import { degrees } from '../../tooth/gear.js';
import { isUnderside } from './undersides.js';

/** What of a surface overhangs. Angles in degrees from the vertical: 0 is a wall, 90 a ceiling. */
export interface Overhang {
  /** Area that overhangs by more than the limit, mm². */
  area: number;
  /** The steepest overhang of any triangle, whether beyond the limit or not; 0 where nothing overhangs. */
  steepest: number;
  /** Middle of the triangle beyond the limit that overhangs most, else of the steepest one, mm. */
  at: [number, number, number];
}

/** What is counted as overhanging. Lengths in mm. */
export interface OverhangLimits {
  /** Steepest overhang that is allowed, degrees from the vertical. */
  angle: number;
  /** Only what lies above this height counts: the first layer lies on the bed. */
  above: number;
  /**
   * Largest distance of the mesh from the exact surface: a triangle counts only when it leans out by more than the
   * limit and what moving its corners by that much can explain, `MOST_EXPLAINED` at most. So the facets of an exact
   * 45° cone pass at 45°, though narrow ones among them lean a little more than the cone.
   */
  tolerance: number;
  /** Leave out flat undersides, which may be carried or bridged and are measured by `undersidesOf` [false]. */
  withoutUndersides?: boolean;
}

/**
 * Most that the mesh tolerance is allowed to explain, degrees: a ceiling of needle-shaped triangles is a ceiling all
 * the same. Narrow facets of bevels at 45° were measured at up to 47.1°.
 */
const MOST_EXPLAINED = 4;

/**
 * Area of a mesh's triangles that face down and lean out farther than a limit, measured above the first layer.
 * The mesh stands as it is printed: z up, bed at z = 0, triangles counter-clockwise from outside.
 */
export function overhangOf({ positions: p, triangles }: Mesh, limits: OverhangLimits): Overhang {
  const { above, tolerance } = limits;
  const found: Overhang = { area: 0, steepest: 0, at: [0, 0, 0] };
  let worst = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    const za = p[a + 2];
    const zb = p[b + 2];
    const zc = p[c + 2];
    const top = Math.max(za, zb, zc);
    if (top <= above || (limits.withoutUndersides && isUnderside(p, a, b, c))) continue;
    const ux = p[b] - p[a];
    const uy = p[b + 1] - p[a + 1];
    const uz = zb - za;
    const vx = p[c] - p[a];
    const vy = p[c + 1] - p[a + 1];
    const vz = zc - za;
    const down = uy * vx - ux * vy;
    if (!(down > 0)) continue;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const angle = degrees(Math.atan2(down, Math.hypot(nx, ny)));
    const doubled = Math.hypot(nx, ny, down);
    const longest = Math.max(
      Math.hypot(ux, uy, uz),
      Math.hypot(vx, vy, vz),
      Math.hypot(vx - ux, vy - uy, vz - uz),
    );
    // The least height of the triangle is its doubled area over its longest side.
    const explained = Math.min(MOST_EXPLAINED, degrees(Math.atan((2 * tolerance * longest) / doubled)));
    const beyond = angle > limits.angle + explained + ROUNDING;
    const counted = beyond ? (doubled / 2) * shareAbove(za, zb, zc, above) : 0;
    found.area += counted;
    found.steepest = Math.max(found.steepest, angle);
    // Anything beyond the limit is worse than all that is not.
    const badness = beyond ? 90 + angle : angle;
    if (badness > worst) {
      worst = badness;
      found.at = [(p[a] + p[b] + p[c]) / 3, (p[a + 1] + p[b + 1] + p[c + 1]) / 3, (za + zb + zc) / 3];
    }
  }
  return found;
}

/** Rounding of doubles, degrees: a wall at exactly the limit passes. */
const ROUNDING = 1e-9;

/** Share of a triangle's area that lies above a height, its corners being at these heights. */
function shareAbove(za: number, zb: number, zc: number, height: number): number {
  const [low, middle, high] = [za, zb, zc].sort((x, y) => x - y);
  if (height <= low) return 1;
  if (height >= high) return 0;
  // Cut parallel to its base a triangle keeps the square of the share of its height.
  return height <= middle
    ? 1 - (height - low) ** 2 / ((middle - low) * (high - low))
    : (high - height) ** 2 / ((high - low) * (high - middle));
}

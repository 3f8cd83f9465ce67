import { deepestByFace } from '../spec/bevelLimits.js';
import { ranges } from '../spec/ranges.js';
import { radians } from '../tooth/gear.js';
import type { ToothProfile } from '../tooth/profile.js';

/** Where a lip may begin in the end face, as depths from the gear's tips towards its roots, mm. */
export interface LipRoom {
  /** The root circle. */
  deepest: number;
  /** Where it keeps just the gap to the planets' bevels, and where it reaches just over them. */
  least: number;
  most: number;
}

/** Share of the tooth, from tip to where the involute ends, that a bevel may take: it leaves some in the end face. */
export const MOST_BEVEL = 0.9;
/** Share of the involute that is cut back at least, so that the lip begins on a flank. */
const LEAST_BEVEL = 0.1;
/** Least that is left to choose, mm. */
const LEAST_CHOICE = 0.002;

/**
 * Lip and planet bevel are parallel cones; on the line of centres they are the gap apart where the lip begins
 * gap / sin(bevel angle) outside (for the sun: inside) the planet's end face. Its own bevel begins at the same circle,
 * on the involute. Neither cone is higher than bevels may be: those of the two end faces would meet.
 * @param bevel of the planets, mm
 * @param gap along the normal, mm
 * @param bevelAngle degrees
 * @param faceWidth mm
 * @returns null where there is no room
 * Source: plain geometry.
 */
export function lipRoom(
  part: 'ring' | 'sun',
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>,
  centreDistance: number,
  bevel: number,
  gap: number,
  bevelAngle: number,
  faceWidth: number,
): LipRoom | null {
  const profile = profiles[part];
  const away = part === 'ring' ? 1 : -1;
  const depthOf = (radius: number) => away * (radius - profile.tipRadius);
  const planetTip = depthOf(centreDistance + away * profiles.planet.tipRadius);
  const involute = depthOf(profile.formRadius);
  const deepest = depthOf(profile.rootRadius);
  const highest = deepestByFace(faceWidth, bevelAngle);
  const overBevel = planetTip - bevel + gap / Math.sin(radians(bevelAngle));
  const least = Math.max(overBevel, LEAST_BEVEL * involute, deepest - highest);
  // A lip that begins beyond the tips of the planets lies over nothing.
  const most = Math.min(MOST_BEVEL * involute, planetTip - gap, highest);
  if (most - least < LEAST_CHOICE || deepest - least < ranges.lipReach[0]) return null;
  return { deepest, least, most };
}

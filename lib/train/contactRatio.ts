import { type Gear, gearSizes } from '../tooth/gear.js';
import type { PairSizes } from './pair.js';

/** Where contact begins and ends on the line of action, mm from gear 1's point of tangency, towards its tip. */
export interface PathOfContact {
  start: number;
  end: number;
}

type PathSizes = Omit<PairSizes, 'teeth1' | 'teeth2' | 'basePitch'>;

/**
 * The part of the line of action along which flanks touch. Tips limit it, and so do the form radii when they
 * are given; without them the involutes are taken to reach as far as the mate's tip, as handbooks do.
 * @returns mm; `end` may lie before `start` when nothing is left
 * Source: ISO 21771, transverse path of contact; a point at tangent length s on gear 1 is at a sin α_wt − s on
 * an external mate and at s + a sin α_wt on a ring.
 */
export function pathOfContact(pair: PathSizes): PathOfContact {
  const line = pair.centreDistance * Math.sin(pair.workingPressureAngle);
  const onFirst = (length: number) => (pair.internal ? length - line : line - length);
  const tip2 = onFirst(tangentLength(pair.tipRadius2, pair.baseRadius2));
  let start = tip2;
  let end = tangentLength(pair.tipRadius1, pair.baseRadius1);
  if (pair.formRadius1 !== undefined)
    start = Math.max(start, tangentLength(pair.formRadius1, pair.baseRadius1));
  if (pair.formRadius2 !== undefined)
    end = Math.min(end, onFirst(tangentLength(pair.formRadius2, pair.baseRadius2)));
  return { start, end };
}

/**
 * Transverse contact ratio ε_α: the path of contact in base pitches.
 * @param pair sizes as `pairSizes` gives them; the ring is gear 2
 * @returns pure number, at least 0
 * Source: ISO 21771, ε_α = g_α / p_bt.
 */
export function transverseContactRatio(pair: PathSizes & { basePitch: number }): number {
  const { start, end } = pathOfContact(pair);
  return Math.max(0, end - start) / pair.basePitch;
}

/**
 * Overlap ratio ε_β of a helical gear.
 * @param faceWidth axial length over which the helix runs one way, mm
 * @returns pure number; 0 for spur
 * Source: ISO 21771, ε_β = b sin β / (π m_n).
 */
export function overlapRatio(gear: Gear, faceWidth: number): number {
  return (faceWidth * Math.sin(gearSizes(gear).helixAngle)) / (Math.PI * gear.module);
}

/** Length of the tangent from a point at `radius` to the base circle, mm; 0 at and below the base circle. */
function tangentLength(radius: number, baseRadius: number): number {
  return Math.sqrt(Math.max(0, radius * radius - baseRadius * baseRadius));
}

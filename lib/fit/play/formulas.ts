import { inverseInvolute, involute } from '../../tooth/involute.js';
import type { PairSizes } from '../../train/pair.js';
import type { LooseSet } from './looseSet.js';

/**
 * Backlash of one mesh.
 * @param gap normal distance between flanks with the gears centred, mm
 * @returns mm: along the normal (j_bn), and on the working pitch circle (j_wt)
 * Source: ISO 21771, j_bn = j_wt cos α_wt cos β_b.
 */
export function backlash(
  pair: Pick<PairSizes, 'workingPressureAngle'>,
  gap: number,
  baseHelixAngle: number,
): { normal: number; circumferential: number } {
  const normal = 2 * gap;
  return {
    normal,
    circumferential: normal / (Math.cos(pair.workingPressureAngle) * Math.cos(baseHelixAngle)),
  };
}

/**
 * How far the ring turns from the middle to its stop, sun and planets' axes held, radians: a planet takes up the gap
 * to the sun, then the ring the gap to the planet, both along the line of action: 2 gap / (cos β_b r_b,ring).
 * Source: derived from ISO 21771, the arcs on the base circles of all gears of a train are equal.
 */
export function ringTurn({ gap, ring, outer }: LooseSet): number {
  return (2 * gap) / (Math.cos(ring.profile.sizes.baseHelixAngle) * outer.baseRadius2);
}

/**
 * How far a planet can be pushed towards the sun and towards the ring, both held, before flanks wedge on both sides or
 * tips reach roots, mm. To first order gap / (sin α_wt cos β_b); here at the changed centre distance.
 * Source: ISO 21771, backlash at a changed centre distance: g_t = (r_b1 ± r_b2)(inv α' − inv α).
 */
export function radialPlay({ gap, sun, planets, ring, inner, outer }: LooseSet): {
  toSun: number;
  toRing: number;
} {
  const planet = planets[0].profile;
  const along = gap / Math.cos(planet.sizes.baseHelixAngle);
  const wedge = (pair: PairSizes, bases: number, way: 1 | -1) => {
    const value = involute(pair.workingPressureAngle) + (way * along) / bases;
    // Below 0 the base circles' tangent has vanished before the flanks wedge.
    return Math.abs(bases / Math.cos(inverseInvolute(Math.max(0, value))) - pair.centreDistance);
  };
  return {
    toSun: Math.min(
      wedge(inner, inner.baseRadius1 + inner.baseRadius2, -1),
      inner.centreDistance - sun.profile.tipRadius - planet.rootRadius,
      inner.centreDistance - planet.tipRadius - sun.profile.rootRadius,
    ),
    toRing: Math.min(
      wedge(outer, outer.baseRadius2 - outer.baseRadius1, 1),
      ring.profile.rootRadius - planet.tipRadius - outer.centreDistance,
      ring.profile.tipRadius - planet.rootRadius - outer.centreDistance,
    ),
  };
}

/**
 * How far a planet or the sun of a herringbone set can move up or down between held mates, mm: gap / sin β_b.
 * Infinity for the other forms, where one helix lets a part screw out. Source: derived, the flank's normal rises by
 * sin β_b.
 */
export function axialPlay({ form, gap, sun }: LooseSet): number {
  return form === 'herringbone' ? gap / Math.sin(sun.profile.sizes.baseHelixAngle) : Number.POSITIVE_INFINITY;
}

/** Depth to which the teeth of a mesh overlap, centred, mm. */
export function workingDepth({ internal, centreDistance, tipRadius1, tipRadius2 }: PairSizes): number {
  return internal ? centreDistance + tipRadius1 - tipRadius2 : tipRadius1 + tipRadius2 - centreDistance;
}

import type { ToothProfile } from '../../tooth/profile.js';
import { rollAt } from '../../tooth/rollAt.js';
import { sampleSegment } from '../../tooth/sample.js';
import type { Involute, Segment } from '../../tooth/segments.js';
import type { Patch } from './pitchVertices.js';

/** Largest distance from the exact surface that each kind of patch may have, mm. */
export type Allowance = Record<Patch['kind'], number>;

/** How finely one pitch is divided. Angles in radians. */
export interface Steps {
  /** Turn of the helix from one level to the next along root curves and the foot of the flanks. */
  rootTurn: number;
  /** The same along the tip edges. */
  tipTurn: number;
  /** Step of angle along an arc about the axis of the given radius. */
  arc: (radius: number) => number;
  /** Roll angles from one to the other, both included. */
  flankRolls: (flank: Involute, from: number, to: number) => number[];
  /** Parameters along a root curve, both ends included. */
  rootPoints: (segment: Segment) => number[];
}

/**
 * Near the base circle the generators run almost along the tooth, as tangents of the edge on which the helicoid
 * turns back, and zipping across them could fold the surface. Below this many level turns of roll the flank is
 * laid out as a grid instead.
 */
export const GRID_TURNS = 3;

/**
 * Parts of a root curve's allowance that are spent across it and along the helix. An external root is a saddle, so that
 * one error takes from the other; an internal one bends one way and they add up.
 */
const ROOT_SHARES = { external: { across: 1, along: 1 }, internal: { across: 0.7, along: 0.3 } };

/**
 * Steps whose chords stay within the allowance, from the curvature of each surface.
 * The sagitta of a chord that turns by Δ on a radius of curvature ρ is ρ Δ²/8. Between two generators of the
 * involute helicoid ρ = r_b ψ / cos β_b and Δ = cos β_b × the step of the ruling angle; on a cylinder ρ is its
 * radius.
 * @param foot whether flanks bound the steps at their foot too, where a grid by the base circle comes before them: that is
 * seldom needed, in pinions of few teeth
 */
export function stepsFor(profile: ToothProfile, allowance: Allowance, foot: boolean): Steps {
  const { baseRadius, baseHelixAngle } = profile.sizes;
  const cosBase = Math.cos(baseHelixAngle);
  const share = profile.gear.internal ? ROOT_SHARES.internal : ROOT_SHARES.external;
  const arc = (radius: number) => Math.sqrt((8 * allowance.land) / radius);
  const flankTurn = (radius: number) =>
    Math.sqrt((8 * allowance.flank) / (baseRadius * rollAt(baseRadius, radius) * cosBase));
  const rootTurn = Math.min(
    arc(profile.rootRadius),
    flankTurn(profile.formRadius),
    // Where the grid by the base circle ends, at that many turns of roll, the flank begins: Δ² = 8 δ / (r_b 3 Δ cos β_b).
    foot ? Math.cbrt((8 * allowance.flank) / (GRID_TURNS * baseRadius * cosBase)) : Infinity,
    Math.sqrt((8 * allowance.root * share.along) / profile.rootRadius),
  );
  return {
    rootTurn,
    tipTurn: Math.min(arc(profile.tipRadius), flankTurn(profile.tipRadius)),
    arc,
    flankRolls: (flank, from, to) => sampleSegment({ ...flank, from, to }, allowance.flank / cosBase),
    rootPoints: (segment) => sampleSegment(segment, allowance.root * share.across),
  };
}

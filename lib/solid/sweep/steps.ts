import type { ToothProfile } from '../../tooth/profile.js';
import { rollAt } from '../../tooth/rollAt.js';
import { sampleSegment } from '../../tooth/sample.js';
import type { Involute, Segment } from '../../tooth/segments.js';
import type { Patch } from './pitchVertices.js';

/** Largest distance from the exact surface that each kind of patch may have, mm. */
export type Allowance = Record<Patch['kind'], number>;

/** How finely one pitch is divided. Angles in radians. */
export interface Steps {
  /** Turn of the helix from one level to the next. */
  turn: number;
  /** Step of angle along an arc about the axis of the given radius. */
  arc: (radius: number) => number;
  /** Roll angles from one to the other, both included. */
  flankRolls: (flank: Involute, from: number, to: number) => number[];
  /** Parameters along a root curve, both ends included. */
  rootPoints: (segment: Segment) => number[];
}

/** The part of a root curve's allowance that is spent across it; the rest is spent along the helix. */
const ROOT_ACROSS = 0.6;

/**
 * Steps whose chords stay within the allowance, from the curvature of each surface.
 * The sagitta of a chord that turns by Δ on a radius of curvature ρ is ρ Δ²/8. Between two generators of the
 * involute helicoid ρ = r_b ψ / cos β_b and Δ = cos β_b × the step of the ruling angle; on a cylinder ρ is its
 * radius.
 */
export function stepsFor(profile: ToothProfile, allowance: Allowance): Steps {
  const { baseRadius, baseHelixAngle } = profile.sizes;
  const cosBase = Math.cos(baseHelixAngle);
  const outer = Math.max(profile.tipRadius, profile.rootRadius);
  const steepest = rollAt(baseRadius, Math.max(profile.formRadius, profile.tipRadius));
  const arc = (radius: number) => Math.sqrt((8 * allowance.land) / radius);
  const turn = Math.min(
    arc(outer),
    Math.sqrt((8 * allowance.flank) / (baseRadius * steepest * cosBase)),
    Math.sqrt((8 * allowance.root * (1 - ROOT_ACROSS)) / profile.rootRadius),
  );
  return {
    turn,
    arc,
    flankRolls: (flank, from, to) =>
      noLongerThan(turn, sampleSegment({ ...flank, from, to }, allowance.flank / cosBase)),
    rootPoints: (segment) => sampleSegment(segment, allowance.root * ROOT_ACROSS),
  };
}

/**
 * Splits what is longer than `step`. Near the base circle curvature alone would allow steps of roll far longer
 * than the levels' turn, and generators from the form column would find no partner in the end face.
 */
function noLongerThan(step: number, values: readonly number[]): number[] {
  return values.flatMap((value, i) => {
    if (i === 0) return [value];
    const before = values[i - 1];
    const count = Math.max(1, Math.ceil(Math.abs(value - before) / step - 1e-9));
    return Array.from({ length: count }, (_, j) => before + ((value - before) * (j + 1)) / count);
  });
}

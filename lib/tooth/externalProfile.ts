import { refuse } from '../refusal.js';
import { type Gear, gearSizes } from './gear.js';
import { involute } from './involute.js';
import type { ProfileCuts, ToothProfile } from './profile.js';
import { pointOnTrochoid, type RackRoot, rackRoot } from './rackRoot.js';
import { rollAt } from './rollAt.js';
import { type Involute, mirrored, type Segment, type Trochoid } from './segments.js';

/**
 * Outline of one external tooth: root land, generated root, involute, tip land, and back down.
 * @throws Refusal when the tooth comes to a point below its tip circle
 * Source: ISO 21771 for the involute and its thickness; the root is the envelope of the basic rack (ISO 53).
 */
export function externalProfile(gear: Gear, cuts: Required<ProfileCuts>): ToothProfile {
  const sizes = gearSizes(gear);
  const { baseRadius } = sizes;
  const root = rackRoot(gear, cuts.relief, cuts.rootRadius, cuts.activeRadius, cuts.straight);
  const start = flankFoot(gear, cuts.relief);
  const middle = -Math.PI / gear.teeth;
  const end = rootMeetsFlank(root, baseRadius, start + middle);
  const formRadius = Math.hypot(...pointOnTrochoid(root, end));
  const tipRoll = rollAt(baseRadius, cuts.tipRadius);
  const tipHalfAngle = start - (tipRoll - Math.atan(tipRoll));
  if (!(tipHalfAngle > 0) || formRadius >= cuts.tipRadius)
    refuse('pointed-tooth', 'module', gear.module, 'a tooth comes to a point below its tip circle');

  const fillet: Trochoid = { kind: 'trochoid', root, middle, mirrored: false, from: 0, to: end };
  const flank: Involute = {
    kind: 'involute',
    baseRadius,
    start: -start,
    turn: 1,
    from: rollAt(baseRadius, formRadius),
    to: tipRoll,
  };
  const landHalfAngle = root.centreAlong / root.cosHelix / root.referenceRadius;
  const segments: Segment[] = [
    { kind: 'arc', radius: cuts.rootRadius, from: middle - landHalfAngle, to: middle + landHalfAngle },
    fillet,
    flank,
    { kind: 'arc', radius: cuts.tipRadius, from: -tipHalfAngle, to: tipHalfAngle },
    mirrored(flank),
    mirrored(fillet),
  ];
  const undercut = root.flankEndRoll < 0;
  return { ...cuts, gear, sizes, rounding: root.radius, formRadius, undercut, segments };
}

/**
 * Radius at which the true involute of an external gear begins, mm, for a tooth that may be pointed.
 * @param relief normal distance that each flank is set back, mm
 * @param activeRadius where mates need the involute to begin, mm [no need]
 */
export function generatedFormRadius(
  gear: Gear,
  relief: number,
  rootRadius: number,
  activeRadius?: number,
): number {
  const root = rackRoot(gear, relief, rootRadius, activeRadius);
  const { baseRadius } = gearSizes(gear);
  const end = rootMeetsFlank(root, baseRadius, flankFoot(gear, relief) - Math.PI / gear.teeth);
  return Math.hypot(...pointOnTrochoid(root, end));
}

/** Half the angle of the relieved tooth on its base circle, radians. */
function flankFoot(gear: Gear, relief: number): number {
  const sizes = gearSizes(gear);
  return (
    sizes.halfThicknessAngle +
    involute(sizes.transversePressureAngle) -
    relief / (sizes.baseRadius * Math.cos(sizes.baseHelixAngle))
  );
}

/**
 * Parameter at which the generated root passes into the involute: the tangent end of the rounding, or, when the
 * root is undercut, the place where the root curve cuts through the involute.
 * @param footAngle polar angle of the involute's foot counted from the middle of the space (negative), radians
 */
function rootMeetsFlank(root: RackRoot, baseRadius: number, footAngle: number): number {
  if (root.flankEndRoll >= 0) return root.end;
  const radiusAt = (t: number) => Math.hypot(...pointOnTrochoid(root, t));
  // Positive while the root curve lies inside the tooth, that is while the rack cuts the involute away.
  const cutAway = (t: number) => {
    const [x, y] = pointOnTrochoid(root, t);
    const roll = rollAt(baseRadius, Math.hypot(x, y));
    return Math.atan2(y, x) + footAngle - (roll - Math.atan(roll));
  };
  // The involute begins at the base circle, so that is where the search begins; in a hair of an undercut the root
  // curve leaves the tooth right there.
  const atBase = bisect((t) => baseRadius - radiusAt(t), 0, root.end);
  const STEPS = 256;
  let before = atBase;
  for (let step = 1; step <= STEPS; step++) {
    const t = atBase + ((root.end - atBase) * step) / STEPS;
    if (cutAway(t) <= 0) return bisect(cutAway, before, t);
    before = t;
  }
  return root.end;
}

/** Zero of `f` between `low` (positive) and `high` (not positive). */
function bisect(f: (t: number) => number, low: number, high: number): number {
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

import { refuse } from '../refusal.js';
import { type Gear, gearSizes } from './gear.js';
import { involute } from './involute.js';
import { polar } from './polar.js';
import type { ProfileCuts, ToothProfile } from './profile.js';
import { rollAt } from './rollAt.js';
import { type Involute, mirrored, type Round, type Segment } from './segments.js';

/** Least root rounding and least half width of the root land of a ring, in modules. */
const LEAST_ROUND = 0.02;
const LEAST_LAND = 0.01;

/**
 * Outline of one ring tooth: root land (outermost), root rounding, involute, tip land (innermost), and back.
 * The space between two teeth has the flanks of an external tooth of the same numbers; the root rounding is a
 * circular arc that touches flank and root circle and stays outside `activeRadius`.
 * @throws Refusal when the ring's tooth comes to a point, or the tip lies below the base circle
 * Source: ISO 21771 for the involute; the rounding is our own construction.
 */
export function internalProfile(gear: Gear, cuts: Required<ProfileCuts>, part: string): ToothProfile {
  const sizes = gearSizes(gear);
  const { baseRadius } = sizes;
  const spaceStart =
    sizes.halfThicknessAngle +
    involute(sizes.transversePressureAngle) +
    cuts.relief / (baseRadius * Math.cos(sizes.baseHelixAngle));
  const half = Math.PI / gear.teeth;
  const start = half - spaceStart;
  const tipRoll = rollAt(baseRadius, cuts.tipRadius);
  const tipHalfAngle = start + tipRoll - Math.atan(tipRoll);
  if (!(tipHalfAngle > 0))
    refuse('pointed-tooth', `${part}.teeth`, gear.teeth, `the teeth of the ${part} come to a point`);
  if (cuts.tipRadius < baseRadius)
    refuse('no-involute', `${part}.teeth`, gear.teeth, `the tips of the ${part} lie below its base circle`);

  const round = rootRound(gear, cuts, spaceStart, part);
  const formRadius = baseRadius * Math.sqrt(1 + round.flankRoll ** 2);
  const fillet: Round = {
    kind: 'round',
    centre: polar(round.centreRadius, round.centreAngle - half),
    radius: round.radius,
    from: round.centreAngle - half,
    // The common normal at the flank is the ruling line: it leaves the base circle at right angles to τ.
    to: spaceStart - half - round.flankRoll + Math.PI / 2,
  };
  const flank: Involute = {
    kind: 'involute',
    baseRadius,
    start: -start,
    turn: -1,
    from: round.flankRoll,
    to: tipRoll,
  };
  const segments: Segment[] = [
    {
      kind: 'arc',
      radius: cuts.rootRadius,
      from: -half - round.centreAngle,
      to: -half + round.centreAngle,
    },
    fillet,
    flank,
    { kind: 'arc', radius: cuts.tipRadius, from: -tipHalfAngle, to: tipHalfAngle },
    mirrored(flank),
    mirrored(fillet),
  ];
  return { ...cuts, gear, sizes, rounding: round.radius, formRadius, undercut: false, segments };
}

/**
 * The largest rounding, up to the rack's, that leaves the active flank free and a root land to stand on.
 * A circle that touches an involute has its centre on the involute turned by radius / base radius.
 */
function rootRound(gear: Gear, cuts: Required<ProfileCuts>, spaceStart: number, part: string) {
  const { baseRadius } = gearSizes(gear);
  const activeRoll = rollAt(baseRadius, cuts.activeRadius);
  const at = (radius: number) => {
    const centreRadius = cuts.rootRadius - radius;
    const centreRoll = rollAt(baseRadius, centreRadius);
    return {
      radius,
      centreRadius,
      centreAngle: spaceStart - radius / baseRadius - (centreRoll - Math.atan(centreRoll)),
      flankRoll: centreRoll + radius / baseRadius,
    };
  };
  const fits = (radius: number) => {
    const { flankRoll, centreAngle, centreRadius } = at(radius);
    return (
      flankRoll >= activeRoll &&
      centreAngle * cuts.rootRadius >= LEAST_LAND * gear.module &&
      centreRadius > baseRadius
    );
  };
  const wanted = Math.max(gear.rack.fillet, LEAST_ROUND) * gear.module;
  if (fits(wanted)) return at(wanted);
  let low = LEAST_ROUND * gear.module;
  const rule = `the tooth spaces of the ${part} leave no room for a root rounding`;
  if (!fits(low)) refuse('no-fillet-room', `${part}.teeth`, gear.teeth, rule);
  let high = wanted;
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return at(low);
}

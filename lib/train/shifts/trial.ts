import { slidingAt } from '../specificSliding.js';
import type { Distance } from './distance.js';
import type { Frame, FrameGear } from './frame.js';

/** One choice of shifts, with every size as it would be made. Lengths in normal modules, angles in radians. */
export interface Trial {
  at: Distance;
  sun: number;
  planet: number;
  ring: number;
  sunTip: number;
  planetTip: number;
  ringTip: number;
  ringRoot: number;
  /** Lengths along the line of action from the points of tangency: where true involutes begin, where tips touch. */
  sunForm: number;
  planetForm: number;
  sunReach: number;
  planetReach: number;
  ringReach: number;
}

/**
 * The set with planet shift `planet` at a common centre distance: tips shortened, roots deepened and ring tips cut
 * back by the same rules as the set that is made from it.
 * Source: ISO 21771 for the sizes; DIN 3960 for where the involute begins, at the tangent length
 * r sin α_t − (h − x)/sin α_t (from memory), h the straight depth of the rack; undercut is not modelled.
 */
export function trialOf(frame: Frame, at: Distance, planet: number): Trial {
  const { rack, clearance, gap, unshifted } = frame;
  const sun = at.inner.shifts - planet;
  const ring = at.outer.shifts + planet;
  const sunTip = tipRadius(frame, 'sun', sun, at);
  const planetTip = tipRadius(frame, 'planet', planet, at);
  const planetForm = formLength(frame, 'planet', planet);
  // A tip that stands off by the gap has its nearest point that much lower on the planet's flank.
  const cut = at.outer.line + planetForm + gap / frame.cosBaseHelix;
  const nominal = frame.ring.referenceRadius + ring - rack.addendum;
  // Plain roots throughout: hypot costs many times as much, and nothing here overflows.
  const ringTip = Math.max(nominal, Math.sqrt(frame.ring.baseRadius ** 2 + cut * cut));
  const room = clearance + at.outer.shifts - (at.centreDistance - unshifted.outer) + at.shortening;
  return {
    at,
    sun,
    planet,
    ring,
    sunTip,
    planetTip,
    ringTip,
    ringRoot: frame.ring.referenceRadius + ring + rack.dedendum + Math.max(0, gap - room),
    sunForm: formLength(frame, 'sun', sun),
    planetForm,
    sunReach: reachOf(frame.sun, sunTip),
    planetReach: reachOf(frame.planet, planetTip),
    ringReach: reachOf(frame.ring, ringTip),
  };
}

function tipRadius(frame: Frame, part: 'sun' | 'planet', shift: number, { shortening }: Distance): number {
  return frame[part].referenceRadius + shift + frame.rack.addendum - shortening;
}

function reachOf({ baseRadius }: FrameGear, tip: number): number {
  return Math.sqrt(Math.max(0, tip * tip - baseRadius * baseRadius));
}

/** Length along the line of action at which the true involute begins. */
function formLength(frame: Frame, part: 'sun' | 'planet', shift: number): number {
  const { sinTransverse } = frame;
  const { referenceRadius, straightDepth } = frame[part];
  return Math.max(0, referenceRadius * sinTransverse - (straightDepth - shift) / sinTransverse);
}

/** Transverse contact ratios of both meshes. Source: ISO 21771, as `transverseContactRatio`. */
export function contactOf(frame: Frame, trial: Trial): { inner: number; outer: number } {
  const { at, sunForm, planetForm, sunReach, planetReach, ringReach } = trial;
  const [toSun, toRing] = [at.inner.line, at.outer.line];
  const inner = Math.min(sunReach, toSun - planetForm) - Math.max(toSun - planetReach, sunForm);
  const outer = planetReach - Math.max(ringReach - toRing, planetForm);
  return { inner: inner / frame.basePitch, outer: outer / frame.basePitch };
}

/** Largest specific sliding of sun and planet in their mesh, negative. Source: see `specificSliding`. */
export function slidingOf(frame: Frame, trial: Trial): { sun: number; planet: number } {
  const { ratio, line, start, end } = deepest(frame, trial);
  return { sun: slidingAt(ratio, start, line - start), planet: slidingAt(1 / ratio, end, line - end) };
}

/**
 * The planet's largest sliding less the sun's at a planet shift, times ratio × start × end: of the same sign and with
 * the same zero, but finite and smooth where contact reaches a base circle.
 */
export function slidingLean(frame: Frame, at: Distance, planet: number): number {
  const sun = at.inner.shifts - planet;
  const { ratio, line, start, end } = deepest(frame, {
    at,
    sunForm: formLength(frame, 'sun', sun),
    planetForm: formLength(frame, 'planet', planet),
    sunReach: reachOf(frame.sun, tipRadius(frame, 'sun', sun, at)),
    planetReach: reachOf(frame.planet, tipRadius(frame, 'planet', planet, at)),
  });
  return ratio * ratio * (line - start) * end - (line - end) * start;
}

/** Lengths along the line of action where the mate's tip touches deepest: on the sun, and on the planet. */
function deepest(
  frame: Frame,
  {
    at,
    sunForm,
    planetForm,
    sunReach,
    planetReach,
  }: Pick<Trial, 'at' | 'sunForm' | 'planetForm' | 'sunReach' | 'planetReach'>,
) {
  const line = at.inner.line;
  return {
    ratio: frame.sun.teeth / frame.planet.teeth,
    line,
    start: Math.max(line - planetReach, sunForm),
    end: Math.max(line - sunReach, planetForm),
  };
}

/**
 * Half the angle of a tooth (of a space, for the ring) on a circle, relief taken off, radians.
 * Source: ISO 21771, as `halfThicknessAngle`.
 */
export function halfAngle(
  frame: Frame,
  part: 'sun' | 'planet' | 'ring',
  shift: number,
  radius: number,
): number {
  const { teeth, baseRadius, reliefAngle } = frame[part];
  const nominal =
    (Math.PI / 2 + 2 * shift * frame.tanNormal) / teeth +
    frame.involuteTransverse -
    involuteAt(baseRadius, radius);
  return part === 'ring' ? nominal + reliefAngle : nominal - reliefAngle;
}

/** Transverse tooth thickness where the true involute begins, relief taken off: the root that a load bends. */
export function rootThicknessOf(frame: Frame, trial: Trial, part: 'sun' | 'planet'): number {
  const form = part === 'sun' ? trial.sunForm : trial.planetForm;
  const radius = Math.hypot(frame[part].baseRadius, form);
  return 2 * radius * halfAngle(frame, part, trial[part], radius);
}

/**
 * The involute function of the pressure angle on a circle; 0 inside the base circle.
 * Source: inv α = tan α − α with cos α = r_b / r; the tangent from the sides of that triangle costs one root.
 */
export function involuteAt(baseRadius: number, radius: number): number {
  if (!(radius > baseRadius)) return Number.isNaN(radius) ? Number.NaN : 0;
  return Math.sqrt(radius * radius - baseRadius * baseRadius) / baseRadius - Math.acos(baseRadius / radius);
}

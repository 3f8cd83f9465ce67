import { involute } from '../../tooth/involute.js';
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
  const { rack, clearance, gap, sinTransverse, unshifted } = frame;
  const sun = at.inner.shifts - planet;
  const ring = at.outer.shifts + planet;
  const reach = (gear: FrameGear, tip: number) =>
    Math.sqrt(Math.max(0, tip * tip - gear.baseRadius * gear.baseRadius));
  const form = ({ referenceRadius, straightDepth }: FrameGear, shift: number) =>
    Math.max(0, referenceRadius * sinTransverse - (straightDepth - shift) / sinTransverse);
  const sunTip = frame.sun.referenceRadius + sun + rack.addendum - at.shortening;
  const planetTip = frame.planet.referenceRadius + planet + rack.addendum - at.shortening;
  const planetForm = form(frame.planet, planet);
  // A tip that stands off by the gap has its nearest point that much lower on the planet's flank.
  const cut = at.outer.line + planetForm + gap / frame.cosBaseHelix;
  const nominal = frame.ring.referenceRadius + ring - rack.addendum;
  const ringTip = Math.max(nominal, Math.hypot(frame.ring.baseRadius, cut));
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
    sunForm: form(frame.sun, sun),
    planetForm,
    sunReach: reach(frame.sun, sunTip),
    planetReach: reach(frame.planet, planetTip),
    ringReach: reach(frame.ring, ringTip),
  };
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
  const { at, sunForm, planetForm, sunReach, planetReach } = trial;
  const ratio = frame.sun.teeth / frame.planet.teeth;
  const line = at.inner.line;
  const start = Math.max(line - planetReach, sunForm);
  const end = Math.max(line - sunReach, planetForm);
  return { sun: slidingAt(ratio, start, line - start), planet: slidingAt(1 / ratio, end, line - end) };
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
  const angle = Math.acos(Math.min(1, baseRadius / radius));
  const nominal =
    (Math.PI / 2 + 2 * shift * frame.tanNormal) / teeth + frame.involuteTransverse - involute(angle);
  return part === 'ring' ? nominal + reliefAngle : nominal - reliefAngle;
}

/** Transverse tooth thickness where the true involute begins, relief taken off: the root that a load bends. */
export function rootThicknessOf(frame: Frame, trial: Trial, part: 'sun' | 'planet'): number {
  const form = part === 'sun' ? trial.sunForm : trial.planetForm;
  const radius = Math.hypot(frame[part].baseRadius, form);
  return 2 * radius * halfAngle(frame, part, trial[part], radius);
}

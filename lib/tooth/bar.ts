import { refuse } from '../refusal.js';
import { radians } from './gear.js';
import type { Rack } from './racks.js';

/** The teeth of a toothed bar: the basic rack itself, straight or slanted. Lengths in mm, angles in degrees. */
export interface Bar {
  /** Normal module m_n, mm. */
  module: number;
  /** Normal pressure angle α_n, degrees. */
  pressureAngle: number;
  /** Angle between a tooth and the face width, degrees, without sign. */
  helixAngle: number;
  /** Basic rack in units of m_n. */
  rack: Rack;
}

/** What is taken off, or added to, the basic rack. Heights are counted from its datum line, mm. */
export interface BarCuts {
  /** Normal distance that each flank is set back into its tooth [0]. */
  relief?: number;
  /** Height of the tips [the addendum]. */
  tip?: number;
  /** Height of the roots, negative [the dedendum]. */
  root?: number;
  /** Height down to which its mate needs straight flanks [no need]. */
  active?: number;
}

/**
 * One tooth of a bar in the normal section: u along the bar from the middle of the tooth, v outward from the datum
 * line, mm. The transverse section is the same, u divided by cos β.
 */
export interface BarProfile extends Required<BarCuts> {
  bar: Bar;
  normalPressureAngle: number;
  helixAngle: number;
  /** Normal pitch p_n = π m_n, and the transverse pitch along the bar. */
  normalPitch: number;
  transversePitch: number;
  /** Half the thickness of the tooth on the datum line. */
  halfThickness: number;
  /** Height at which the straight flank ends and the root rounding begins. */
  form: number;
  /** Root rounding on the side u > 0: its centre and radius. */
  round: { u: number; v: number; radius: number };
}

/** Least half width of the root land, in modules: it never vanishes. */
const LEAST_LAND = 0.002;

/**
 * The tooth of a bar: straight flanks, tips and roots parallel to the datum line, and a root rounding that touches
 * both, as large as the rack's where the space and the active flank leave room.
 * @throws Refusal where the flanks meet below the tip
 * Source: ISO 53, the basic rack and its root fillet.
 */
export function barProfile(bar: Bar, cuts: BarCuts = {}): BarProfile {
  const { module, rack } = bar;
  const alpha = radians(bar.pressureAngle);
  const helixAngle = radians(bar.helixAngle);
  const full = {
    relief: cuts.relief ?? 0,
    tip: cuts.tip ?? rack.addendum * module,
    root: cuts.root ?? -rack.dedendum * module,
    active: cuts.active ?? Number.POSITIVE_INFINITY,
  };
  const normalPitch = Math.PI * module;
  const halfThickness = normalPitch / 4 - full.relief / Math.cos(alpha);
  if (halfThickness - full.tip * Math.tan(alpha) <= 0)
    refuse('pointed-tooth', 'module', module, 'the teeth of the bar come to a point below their tips');
  // Half the root land with a sharp corner, and how much of it a rounding takes up for each mm of its radius.
  const sharp = normalPitch / 2 - halfThickness + full.root * Math.tan(alpha);
  const perRadius = (1 - Math.sin(alpha)) / Math.cos(alpha);
  const widest = (sharp - LEAST_LAND * module) / perRadius;
  const deepest = (full.active - full.root) / (1 - Math.sin(alpha));
  const radius = Math.max(0, Math.min(rack.fillet * module, widest, deepest));
  const v = full.root + radius;
  return {
    bar,
    ...full,
    normalPressureAngle: alpha,
    helixAngle,
    normalPitch,
    transversePitch: normalPitch / Math.cos(helixAngle),
    halfThickness,
    form: full.root + radius * (1 - Math.sin(alpha)),
    round: { u: halfThickness - v * Math.tan(alpha) + radius / Math.cos(alpha), v, radius },
  };
}

/** Half the thickness of the tooth at height v of its straight flank, normal section, mm. */
export function halfThicknessAt({ halfThickness, normalPressureAngle }: BarProfile, v: number): number {
  return halfThickness - v * Math.tan(normalPressureAngle);
}

/**
 * Points of the root rounding on the side u > 0 in the transverse section, from the root up to the straight flank,
 * both ends included.
 * @param sagitta largest distance of a chord from the curve, mm
 */
export function roundPoints(profile: BarProfile, sagitta: number): [number, number][] {
  const { round, helixAngle, normalPressureAngle } = profile;
  const widened = round.radius / Math.cos(helixAngle);
  const span = Math.PI / 2 - normalPressureAngle;
  const step = widened > 0 ? 2 * Math.acos(Math.max(0, 1 - sagitta / widened)) : span;
  const count = widened > 0 ? Math.max(1, Math.ceil(span / step - 1e-9)) : 0;
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = -Math.PI / 2 - (count ? (span * i) / count : 0);
    return [
      (round.u + round.radius * Math.cos(angle)) / Math.cos(helixAngle),
      round.v + round.radius * Math.sin(angle),
    ];
  });
}

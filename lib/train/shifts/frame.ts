import type { Rack } from '../../spec/types.js';
import { gearSizes } from '../../tooth/gear.js';
import { involute } from '../../tooth/involute.js';
import { rackRoot } from '../../tooth/rackRoot.js';

/** Teeth of sun, planet and ring. */
export interface ShiftCounts {
  sunTeeth: number;
  planetTeeth: number;
  ringTeeth: number;
}

/** The shape of the teeth and what is taken off them; angles in degrees, lengths in normal modules. */
export interface ShiftForm {
  rack: Rack;
  /** Normal pressure angle. */
  pressureAngle: number;
  helixAngle: number;
  /** Normal distance between neighbouring flanks [0]. */
  gap?: number;
  /** Share of the gap taken from sun and ring [0.5]. */
  gapShare?: number;
}

/** What one gear of the set brings along, whatever its shift; module 1. */
export interface FrameGear {
  teeth: number;
  referenceRadius: number;
  baseRadius: number;
  /** Normal distance that each flank is set back. */
  relief: number;
  /** Angle by which that turns the involute, radians. */
  reliefAngle: number;
  /** Depth of the straight flank of the generating rack as made, below its datum line. */
  straightDepth: number;
  /** Least profile shift without undercut, by the rack as made and by the handbook rule alike. */
  leastShift: number;
}

/** All that does not change while shifts are looked for. Lengths in normal modules, angles in radians. */
export interface Frame {
  sun: FrameGear;
  planet: FrameGear;
  ring: FrameGear;
  rack: Rack;
  gap: number;
  /** Bottom clearance of the rack. */
  clearance: number;
  tanNormal: number;
  tanHelix: number;
  transverseAngle: number;
  sinTransverse: number;
  involuteTransverse: number;
  cosBaseHelix: number;
  basePitch: number;
  /** Centre distances without shift. */
  unshifted: { inner: number; outer: number };
  /** Centre distances at which the lines of action vanish. */
  base: { inner: number; outer: number };
}

/** Works out a set's frame. Source: ISO 21771; DIN 3960 for the least shift (as in `leastProfileShift`). */
export function shiftFrame(counts: ShiftCounts, form: ShiftForm): Frame {
  const { rack, pressureAngle, helixAngle, gap = 0, gapShare = 0.5 } = form;
  const clearance = rack.dedendum - rack.addendum;
  // Roots are deepened where the rack's clearance is less than the gap, and undercut then sets in sooner.
  const deeper = Math.max(0, gap - clearance);
  const gearOf = (teeth: number, internal: boolean, relief: number): FrameGear => {
    const gear = { teeth, module: 1, pressureAngle, helixAngle, rack, profileShift: 0, internal };
    const sizes = gearSizes(gear);
    const { referenceRadius, baseRadius } = sizes;
    const dedendum = rack.dedendum + deeper;
    const { centreOut, radius } = rackRoot({ ...gear, internal: false }, relief, referenceRadius - dedendum);
    const straightDepth = radius * Math.sin(sizes.normalPressureAngle) - centreOut;
    const depth = Math.max(straightDepth, rack.addendum);
    return {
      teeth,
      referenceRadius,
      baseRadius,
      relief,
      reliefAngle: relief / (baseRadius * Math.cos(sizes.baseHelixAngle)),
      straightDepth,
      leastShift: depth - referenceRadius * Math.sin(sizes.transversePressureAngle) ** 2,
    };
  };
  const sun = gearOf(counts.sunTeeth, false, gap * gapShare);
  const planet = gearOf(counts.planetTeeth, false, gap * (1 - gapShare));
  const ring = gearOf(counts.ringTeeth, true, gap * gapShare);
  const sizes = gearSizes({
    teeth: counts.planetTeeth,
    module: 1,
    pressureAngle,
    helixAngle,
    rack,
    profileShift: 0,
    internal: false,
  });
  return {
    sun,
    planet,
    ring,
    rack,
    gap,
    clearance,
    tanNormal: Math.tan(sizes.normalPressureAngle),
    tanHelix: Math.tan(sizes.helixAngle),
    transverseAngle: sizes.transversePressureAngle,
    sinTransverse: Math.sin(sizes.transversePressureAngle),
    involuteTransverse: involute(sizes.transversePressureAngle),
    cosBaseHelix: Math.cos(sizes.baseHelixAngle),
    basePitch: (2 * Math.PI * planet.baseRadius) / planet.teeth,
    unshifted: {
      inner: sun.referenceRadius + planet.referenceRadius,
      outer: ring.referenceRadius - planet.referenceRadius,
    },
    base: { inner: sun.baseRadius + planet.baseRadius, outer: ring.baseRadius - planet.baseRadius },
  };
}

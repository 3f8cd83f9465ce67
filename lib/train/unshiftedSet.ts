import type { Rack } from '../spec/types.js';
import { generatedFormRadius } from '../tooth/externalProfile.js';
import { type Gear, type GearSizes, gearSizes } from '../tooth/gear.js';
import { tipThickness } from '../tooth/thickness.js';
import { transverseContactRatio } from './contactRatio.js';
import { leastRingTipRadius, trochoidMargin } from './interference.js';
import type { PairSizes } from './pair.js';

/** The shape of the teeth, whatever their size: basic rack in normal modules, angles in degrees. */
export interface ToothForm {
  rack: Rack;
  /** Normal pressure angle. */
  pressureAngle: number;
  helixAngle: number;
}

/** A coaxial set without profile shift, at a normal module of 1 mm: lengths are in normal modules. */
export interface UnshiftedSet {
  sunTeeth: number;
  planetTeeth: number;
  /** z_sun + 2 z_planet: without shift only that gives both meshes one centre distance. */
  ringTeeth: number;
  centreDistance: number;
  sunTipRadius: number;
  planetTipRadius: number;
  /** After the tips are cut back to where the planet's involute begins, if they must be. */
  ringTipRadius: number;
  ringRootRadius: number;
  /** The lesser transverse contact ratio of the two meshes; undercut and cut-back ring tips are counted. */
  engagement: number;
  /** Least of the tip thicknesses; zero or less means a pointed tooth. */
  tipThickness: number;
  /** Room between the tips of planet and ring away from the line of centres, radians. */
  trochoidMargin: number;
  /** Profile shifts; left out where there are none. */
  shifts?: { sun: number; planet: number; ring: number };
  /** Root radius of the ring as made: deeper where the rack's bottom clearance is less than `gap`. */
  ringRootAsMade(gap: number): number;
  /**
   * Normal thickness of the thinnest tip of sun and planets with half of `gap` taken off each flank; all in normal
   * modules.
   */
  tipAsMade(gap: number): number;
}

/** What a plan has to know of a set, shifted or not. */
export type PlannedSet = Omit<UnshiftedSet, 'ringRootRadius' | 'tipThickness' | 'trochoidMargin'>;

/**
 * A maker of unshifted sets that remembers what depends on one gear alone.
 * Without shift the working pressure angle is α_t and every distance is a sum of reference radii, so nothing has
 * to be solved: thousands of sets cost milliseconds.
 * Source: ISO 21771 and the interference tests of `interference.ts`; teeth without relief.
 */
export function unshiftedSets(form: ToothForm): (sunTeeth: number, planetTeeth: number) => UnshiftedSet {
  const external = remembered((teeth) => externalGear(form, teeth));
  const internal = remembered((teeth) => gearSizes(gearOf(form, teeth, true)));
  // One literal with every key in place: spreading parts together costs more than all the geometry.
  const pair = (one: ExternalGear, teeth2: number, two: GearSizes, formRadius2?: number): PairSizes => ({
    internal: formRadius2 === undefined,
    teeth1: one.teeth,
    teeth2,
    baseRadius1: one.sizes.baseRadius,
    baseRadius2: two.baseRadius,
    tipRadius1: one.sizes.tipRadius,
    tipRadius2: two.tipRadius,
    formRadius1: one.formRadius,
    formRadius2,
    centreDistance: Math.abs(
      two.referenceRadius + (formRadius2 === undefined ? -1 : 1) * one.sizes.referenceRadius,
    ),
    workingPressureAngle: two.transversePressureAngle,
    basePitch: Math.PI * two.transverseModule * Math.cos(two.transversePressureAngle),
  });

  return (sunTeeth, planetTeeth) => {
    const ringTeeth = sunTeeth + 2 * planetTeeth;
    const sun = external(sunTeeth);
    const planet = external(planetTeeth);
    const ring = internal(ringTeeth);
    const inner = pair(sun, planetTeeth, planet.sizes, planet.formRadius);
    const outer = pair(planet, ringTeeth, ring);
    const ringTipRadius = Math.max(outer.tipRadius2, outer.baseRadius2, leastRingTipRadius(outer));
    outer.tipRadius2 = ringTipRadius;
    const ringTip = tipThickness(gearOf(form, ringTeeth, true), ringTipRadius);
    return {
      sunTeeth,
      planetTeeth,
      ringTeeth,
      centreDistance: inner.centreDistance,
      sunTipRadius: sun.sizes.tipRadius,
      planetTipRadius: planet.sizes.tipRadius,
      ringTipRadius,
      ringRootRadius: ring.rootRadius,
      engagement: Math.min(transverseContactRatio(inner), transverseContactRatio(outer)),
      tipThickness: Math.min(sun.tipThickness, planet.tipThickness, ringTip),
      trochoidMargin: trochoidMargin(outer),
      ringRootAsMade: (gap) => ring.rootRadius + Math.max(0, gap - (form.rack.dedendum - form.rack.addendum)),
      tipAsMade: (gap) => Math.min(tipAsMade(sun, gap), tipAsMade(planet, gap)),
    };
  };
}

interface ExternalGear {
  teeth: number;
  sizes: GearSizes;
  formRadius: number;
  tipThickness: number;
}

function externalGear(form: ToothForm, teeth: number): ExternalGear {
  const gear = gearOf(form, teeth, false);
  const sizes = gearSizes(gear);
  return {
    teeth,
    sizes,
    formRadius: generatedFormRadius(gear, 0, sizes.rootRadius),
    tipThickness: tipThickness(gear),
  };
}

/** Each flank is turned back by relief / (r_b cos β_b); source as `halfThicknessAngle`. */
function tipAsMade({ sizes, tipThickness }: ExternalGear, gap: number): number {
  const { tipRadius, referenceRadius, baseRadius, baseHelixAngle, helixAngle } = sizes;
  const transverse = tipThickness - (gap * tipRadius) / (baseRadius * Math.cos(baseHelixAngle));
  return transverse / Math.hypot(1, (Math.tan(helixAngle) * tipRadius) / referenceRadius);
}

function gearOf(form: ToothForm, teeth: number, internal: boolean): Gear {
  const { rack, pressureAngle, helixAngle } = form;
  return { teeth, module: 1, pressureAngle, helixAngle, rack, profileShift: 0, internal };
}

/** The function with its results kept by tooth count. */
function remembered<T>(make: (teeth: number) => T): (teeth: number) => T {
  const known = new Map<number, T>();
  return (teeth) => {
    const made = known.get(teeth) ?? make(teeth);
    known.set(teeth, made);
    return made;
  };
}

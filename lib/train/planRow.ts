import { planetPlaces, unbalance } from './assembly.js';
import type { PlannedSet } from './unshiftedSet.js';

/** One set that a search offers. Lengths in mm, angles in degrees. */
export interface PlanRow {
  sunTeeth: number;
  planetTeeth: number;
  ringTeeth: number;
  planets: number;
  /** Normal module. */
  module: number;
  /** `nearest`: the places nearest to equal angles that assemble; the opening is the widest one. */
  spacing: 'equal' | 'nearest';
  /** How far the planets' common centre of mass lies off the axis, as a share of the centre distance; 0 … 1. */
  unbalance: number;
  profileShifts: { sun: number; planet: number; ring: number };
  /** Of the whole set, rim included. */
  outerDiameter: number;
  /** As `opening` defines them; with the ring's tips cut back where they must be. */
  opening: { arc: number; drop: number };
  ratios: { ringHeld: number; carrierHeld: number; sunHeld: number };
  /** The lesser transverse contact ratio of the two meshes: of shifted teeth as made, of others without gap. */
  engagement: number;
  /** As `merits` defines the one asked for; more is better. */
  merit: number;
}

/** A set that keeps every rule and wish but one, which it misses by little. */
export interface NearMiss extends PlanRow {
  /** Name of the rule or wish, and by how much it is missed. */
  fails: string;
}

/** A set, a planet count and a module while the search compares it with others. */
export interface Candidate {
  set: PlannedSet;
  planets: number;
  module: number;
  spacing: PlanRow['spacing'];
  /** mm, rim included. */
  outerDiameter: number;
  /** At a module of 1 mm. */
  opening: { arc: number; drop: number };
  ratios: PlanRow['ratios'];
  merit: number;
  /** The merit `overall`, which settles ties of the one asked for. */
  overall: number;
}

/** The row that shows a candidate. */
export function planRow({ set, planets, module, spacing, opening, ...found }: Candidate): PlanRow {
  const places = planetPlaces(set.sunTeeth, set.ringTeeth, planets);
  return {
    sunTeeth: set.sunTeeth,
    planetTeeth: set.planetTeeth,
    ringTeeth: set.ringTeeth,
    planets,
    module,
    spacing,
    unbalance: spacing === 'equal' ? 0 : unbalance(places),
    profileShifts: set.shifts ?? { sun: 0, planet: 0, ring: 0 },
    outerDiameter: found.outerDiameter,
    opening: { arc: opening.arc, drop: opening.drop * module },
    ratios: found.ratios,
    engagement: set.engagement,
    merit: found.merit,
  };
}

/** Order of rows: merit, then overall merit, then more planets, fewer teeth, larger module. Never calls two rows equal. */
export function byMerit(a: Candidate, b: Candidate): number {
  return (
    b.merit - a.merit ||
    b.overall - a.overall ||
    b.planets - a.planets ||
    a.set.ringTeeth - b.set.ringTeeth ||
    a.set.sunTeeth - b.set.sunTeeth ||
    b.module - a.module
  );
}

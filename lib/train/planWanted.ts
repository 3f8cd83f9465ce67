import { printerProfiles } from '../spec/profiles/printers.js';
import { type RackName, standardRack } from '../spec/racks.js';
import type { Helix, Rack } from '../spec/types.js';
import { radians } from '../tooth/gear.js';
import type { By } from './merit.js';
import type { ToothForm } from './unshiftedSet.js';

/** Both ends included. */
export interface Span {
  least: number;
  most: number;
}

/** Which member of a set stands still. */
export type Held = 'ring' | 'carrier' | 'sun';

/** What is asked of a planetary set; every key may be left out. Lengths in mm, angles in degrees. */
export interface WantedSets {
  /** Tooth counts, one or a span: sun and planets 5 … 400 [5 … 400], ring 10 … 1000 [10 … 120]. */
  sunTeeth?: number | Span;
  planetTeeth?: number | Span;
  ringTeeth?: number | Span;
  /** How many planets, 2 … 12 [3 … 8]. */
  planets?: number | Span;
  /** Normal module, 0.2 … 20: one, a list, or a span of which the standard modules are taken [1 … 3]. */
  module?: number | readonly number[] | Span;
  /** Largest diameter of the whole set, rim included. */
  outerDiameter?: number;
  /** Diameter of a hole that the set goes into: the gap stays free all around, so it is at most hole − 2 × gap across. */
  hole?: number;
  /** Shorter side of the printer's bed: no set is larger, whatever is wanted [220]. */
  bed?: number;
  /** Wall outside the ring's root circle [the greater of 3 and 1.2 tooth depths]. */
  rim?: number;
  /** Normal distance between flanks, and least between the tip circles of neighbouring planets, 0.02 … 2 [0.25]. */
  gap?: number;
  /** Widest angle that may stay open between neighbouring planets. */
  opening?: number;
  /** Turns of input for one of output with one member held [`ring`]; its sign is left aside. */
  ratio?: {
    value: number;
    /** Largest departure from it, same unit [2 % of it]. */
    tolerance?: number;
    held?: Held;
  };
  /** Least transverse contact ratio [1]. */
  engagement?: number;
  /** Basic rack in normal modules, or a standard profile [`B`]. */
  rack?: Rack | RackName;
  /** Normal pressure angle, 14 … 30 [20]. */
  pressureAngle?: number;
  /** Helix angle: 0, or 1 … 45 [30 for herringbone, 20 for helical, as in a parameter file]. */
  helixAngle?: number;
  /** [`spur` where the angle is 0, else `herringbone`] */
  helixForm?: Helix['form'];
  /** Axial length of the teeth, 1 … 250 [20]; it counts for the overlap of helical teeth. */
  faceWidth?: number;
  /** Nozzle diameter, 0.1 … 2: tooth tips, the gap taken off, must be one extruded line wide [not asked]. */
  nozzle?: number;
  /**
   * `solve`: sets that need profile shifts too, with the shifts found: rings with up to two teeth more or fewer than
   * z_sun + 2 z_planet, and plain counts whose unshifted teeth do not run. A fraction of a millisecond each [none].
   */
  shifts?: 'none' | 'solve';
  /** `nearest`: also planets that cannot stand at equal angles, at the nearest places that assemble [equal]. */
  spacing?: 'equal' | 'nearest';
  /** Figure of merit by which rows are ranked [`overall`]; each is explained at `merits`. */
  by?: By;
  /** Most rows, and most near misses, that are given back [20]. */
  limit?: number;
}

/** What was searched for, with every default filled in. `null`: no limit, or the rule named above. */
export interface ResolvedWanted extends ToothForm {
  sunTeeth: Span;
  planetTeeth: Span;
  ringTeeth: Span;
  planets: Span;
  /** The modules tried, ascending. */
  module: number[];
  outerDiameter: number | null;
  hole: number | null;
  /** What outer diameter and hole leave: the largest diameter that is wanted. */
  largest: number | null;
  bed: number;
  rim: number | null;
  gap: number;
  opening: number | null;
  ratio: { value: number; tolerance: number; held: Held } | null;
  engagement: number;
  helixForm: Helix['form'];
  faceWidth: number;
  nozzle: number | null;
  shifts: 'none' | 'solve';
  spacing: 'equal' | 'nearest';
  by: By;
  limit: number;
}

/** As in a parameter file. */
const usualAngle = { herringbone: 30, helical: 20, spur: 0 } as const;

/** Departure from a wanted ratio that is taken to be meant, where the file gives none. */
const RATIO_TOLERANCE = 0.02;

/** Defaults filled in; `modules` are those that `wanted.module` names. Checks nothing. */
export function completeWanted(wanted: WantedSets, modules: readonly number[]): ResolvedWanted {
  const { ratio, rack = 'B', pressureAngle = 20 } = wanted;
  const helixForm = wanted.helixForm ?? (wanted.helixAngle === 0 ? 'spur' : 'herringbone');
  const helixAngle = wanted.helixAngle ?? usualAngle[helixForm];
  const { outerDiameter = null, hole = null, gap = 0.25 } = wanted;
  const largest = Math.min(outerDiameter ?? Infinity, hole === null ? Infinity : hole - 2 * gap);
  return {
    sunTeeth: span(wanted.sunTeeth ?? { least: 5, most: 400 }),
    planetTeeth: span(wanted.planetTeeth ?? { least: 5, most: 400 }),
    ringTeeth: span(wanted.ringTeeth ?? { least: 10, most: 120 }),
    planets: span(wanted.planets ?? { least: 3, most: 8 }),
    module: [...new Set(modules)].sort((a, b) => a - b),
    outerDiameter,
    hole,
    largest: Number.isFinite(largest) ? largest : null,
    bed: wanted.bed ?? printerProfiles.usual.bed.width,
    rim: wanted.rim ?? null,
    gap,
    opening: wanted.opening ?? null,
    ratio: ratio
      ? {
          value: ratio.value,
          tolerance: ratio.tolerance ?? RATIO_TOLERANCE * Math.abs(ratio.value),
          held: ratio.held ?? 'ring',
        }
      : null,
    engagement: wanted.engagement ?? 1,
    rack: typeof rack === 'string' ? standardRack(rack, radians(pressureAngle)) : rack,
    pressureAngle,
    helixAngle,
    helixForm,
    faceWidth: wanted.faceWidth ?? 20,
    nozzle: wanted.nozzle ?? null,
    shifts: wanted.shifts ?? 'none',
    spacing: wanted.spacing ?? 'equal',
    by: wanted.by ?? 'overall',
    limit: wanted.limit ?? 20,
  };
}

/** A single number as a span of its own. */
export function span(given: number | Span): Span {
  return typeof given === 'number' ? { least: given, most: given } : given;
}

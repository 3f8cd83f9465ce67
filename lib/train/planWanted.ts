import { printerProfiles } from '../spec/profiles/printers.js';
import { ranges } from '../spec/ranges.js';
import type { Helix, Rack } from '../spec/types.js';
import { usual } from '../spec/usual.js';
import { radians } from '../tooth/gear.js';
import { type RackName, standardRack } from '../tooth/racks.js';
import type { By } from './merit.js';
import type { ToothForm } from './unshiftedSet.js';

/** Both ends included. */
export interface Span {
  least: number;
  most: number;
}

/** Which member of a set stands still. */
export type Held = 'ring' | 'carrier' | 'sun';

/**
 * What is asked of a planetary set; every key may be left out. Lengths in mm, angles in degrees. What a parameter file
 * states too has its range there, and its default unless another one stands here.
 */
export interface WantedSets {
  /** Tooth counts, one or a span [sun and planets any, ring up to 120]. */
  sunTeeth?: number | Span;
  planetTeeth?: number | Span;
  ringTeeth?: number | Span;
  /** How many planets [3 … 8]. */
  planets?: number | Span;
  /** Normal module: one, a list, or a span of which the standard modules are taken [1 … 3]. */
  module?: number | readonly number[] | Span;
  /** Largest diameter of the whole set, rim included. */
  outerDiameter?: number;
  /** Diameter of a hole that the set goes into: the gap stays free all around, so it is at most hole − 2 × gap across. */
  hole?: number;
  /** Shorter side of the printer's bed: no set is larger, whatever is wanted. */
  bed?: number;
  /** Wall outside the ring's root circle. */
  rim?: number;
  /** Normal distance between flanks, and least between the tip circles of neighbouring planets. */
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
  /** Basic rack in normal modules, or a standard profile. */
  rack?: Rack | RackName;
  /** Normal pressure angle. */
  pressureAngle?: number;
  /** Helix angle: 0 for spur teeth. */
  helixAngle?: number;
  /** [`spur` where the angle is 0, else `herringbone`] */
  helixForm?: Helix['form'];
  /** Axial length of the teeth [20]; it counts for the overlap of helical teeth. */
  faceWidth?: number;
  /** Nozzle diameter: tooth tips, the gap taken off, must be one extruded line wide [not asked]. */
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

/** What a search has that a parameter file does not, or must state there: common practice. */
export const usualWanted = {
  ringTeeth: { least: ranges.ringTeeth[0], most: 120 },
  planets: { least: 3, most: 8 },
  module: { least: 1, most: 3 },
  engagement: 1,
  faceWidth: 20,
  limit: 20,
} as const;

/** Departure from a wanted ratio that is taken to be meant, where the file gives none. */
const RATIO_TOLERANCE = 0.02;

/** Defaults filled in; `modules` are those that `wanted.module` names. Checks nothing. */
export function completeWanted(wanted: WantedSets, modules: readonly number[]): ResolvedWanted {
  const { ratio, rack = usual.rack, pressureAngle = usual.pressureAngle } = wanted;
  const helixForm = wanted.helixForm ?? (wanted.helixAngle === 0 ? 'spur' : usual.helixForm);
  const helixAngle = wanted.helixAngle ?? usual.helixAngle[helixForm];
  const { outerDiameter = null, hole = null, gap = usual.gap } = wanted;
  const largest = Math.min(outerDiameter ?? Infinity, hole === null ? Infinity : hole - 2 * gap);
  const [least, most] = ranges.teeth;
  return {
    sunTeeth: span(wanted.sunTeeth ?? { least, most }),
    planetTeeth: span(wanted.planetTeeth ?? { least, most }),
    ringTeeth: span(wanted.ringTeeth ?? usualWanted.ringTeeth),
    planets: span(wanted.planets ?? usualWanted.planets),
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
    engagement: wanted.engagement ?? usualWanted.engagement,
    rack: typeof rack === 'string' ? standardRack(rack, radians(pressureAngle)) : rack,
    pressureAngle,
    helixAngle,
    helixForm,
    faceWidth: wanted.faceWidth ?? usualWanted.faceWidth,
    nozzle: wanted.nozzle ?? null,
    shifts: wanted.shifts ?? 'none',
    spacing: wanted.spacing ?? 'equal',
    by: wanted.by ?? 'overall',
    limit: wanted.limit ?? usualWanted.limit,
  };
}

/** A single number as a span of its own. */
export function span(given: number | Span): Span {
  return typeof given === 'number' ? { least: given, most: given } : given;
}

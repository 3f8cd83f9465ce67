import { externalProfile } from './externalProfile.js';
import { type Gear, type GearSizes, gearSizes } from './gear.js';
import { internalProfile } from './internalProfile.js';
import type { Segment } from './segments.js';

/** What is taken off, or added to, the standard tooth. Lengths in mm. */
export interface ProfileCuts {
  /** Normal distance that each flank is set back into its tooth, ≥ 0 [0]. */
  relief?: number;
  /** Tip radius [standard for the rack and shift]. */
  tipRadius?: number;
  /** Root radius [standard for the rack and shift]. */
  rootRadius?: number;
  /**
   * Radius from which on (up to which, for a ring) mates need a true involute; the root rounding stays beyond it
   * where that can be [a ring's reference radius; for an external gear whatever the rack's rounding leaves].
   */
  activeRadius?: number;
  /**
   * Depth below the reference circle down to which the rack that generates an external gear stays straight, so that
   * the tips of a bar keep off the root where the rack undercuts it [no need].
   */
  straight?: number;
}

/** The exact transverse outline of one tooth, centred on +x in the gear's own frame. Lengths in mm, angles in radians. */
export interface ToothProfile extends Required<ProfileCuts> {
  gear: Gear;
  sizes: GearSizes;
  /** Where the true involute begins (ends, for a ring) next to the root, mm. */
  formRadius: number;
  /** Radius of the root rounding: of the rack that generates it, in the normal section, or of a ring's arc, mm. */
  rounding: number;
  /** True when the rack cuts into the involute. */
  undercut: boolean;
  /**
   * Counter-clockwise: root land, root curve, flank, tip land, flank, root curve. The last one ends where the
   * next tooth's root land begins.
   */
  segments: Segment[];
}

/**
 * Outline of one tooth of a gear.
 * @param gear teeth, module, angles in degrees, rack, shift; `internal` for a ring
 * @param cuts relief and radii in mm where they differ from the standard tooth
 * @param part what refusals call a gear with teeth inside [ring]
 * @throws Refusal when the flanks meet before the tip or the root
 */
export function toothProfile(gear: Gear, cuts: ProfileCuts = {}, part = 'ring'): ToothProfile {
  const { tipRadius, rootRadius } = gearSizes(gear);
  const full = {
    relief: cuts.relief ?? 0,
    tipRadius: cuts.tipRadius ?? tipRadius,
    rootRadius: cuts.rootRadius ?? rootRadius,
    activeRadius: cuts.activeRadius ?? (gear.internal ? gearSizes(gear).referenceRadius : Infinity),
    straight: cuts.straight ?? Number.NEGATIVE_INFINITY,
  };
  return gear.internal ? internalProfile(gear, full, part) : externalProfile(gear, full);
}

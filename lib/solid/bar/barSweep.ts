import type { PlacedBar } from '../../fit/train/fitTrain.js';
import type { CommonSpec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';

/** How the teeth of a bar are carried along the axis of its pinion. Lengths in mm, angles in radians. */
export interface BarSweep {
  form: 'spur' | 'helical' | 'herringbone';
  faceWidth: number;
  /** Way towards +x for one mm upward, in the lower half of a herringbone. */
  slope: number;
  /** How far the tips are cut back at both end faces, and the angle of the cut from the end face. */
  bevelSize: number;
  bevelAngle: number;
}

/** Share of the tooth, from tip to straight flank's end, that a bevel may take. */
const MOST_BEVEL = 0.9;

/** The sweep of a bar as its file asks for it. */
export function barSweep(spec: CommonSpec, { profile, slope }: PlacedBar): BarSweep {
  return {
    form: spec.helix.form,
    faceWidth: spec.faceWidth,
    slope,
    bevelSize: Math.min(spec.bevel.size, MOST_BEVEL * (profile.tip - profile.form)),
    bevelAngle: radians(spec.bevel.angle),
  };
}

/** How far the teeth stand towards +x at height z against z = 0. */
export function leanAt({ form, faceWidth, slope }: BarSweep, z: number): number {
  return slope * (form === 'herringbone' ? Math.min(z, faceWidth - z) : z);
}

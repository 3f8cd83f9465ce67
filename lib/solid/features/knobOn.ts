import type { Knob } from '../../spec/features/types.js';
import { FLUTE_SHARE } from '../../spec/rules/gearFeatures.js';
import { column } from '../stack/column.js';
import type { Contour } from '../stack/contour.js';
import type { Feature } from '../stack/stack.js';
import { wavyOutline } from './wavyOutline.js';

/** Edge taken off at 45°, mm, and at most this share of the height. */
const CHAMFER = 1;
const CHAMFER_SHARE = 0.25;

function chamferOf({ diameter, height }: { diameter: number; height: number }): number {
  return Math.min(CHAMFER, CHAMFER_SHARE * height, diameter / 16);
}

/** Radius of the largest circle in a knob's top face, inside its hollows and its edge, mm. */
export function knobFace(knob: Knob): number {
  return (knob.diameter / 2) * (1 - (knob.grips ? FLUTE_SHARE : 0)) - chamferOf(knob);
}

/**
 * A knob that stands on the top face, its upper edge taken off at 45°.
 * @param z height of the face it stands on, mm
 * @param holes that open in its own top face
 */
export function knobOn(
  { diameter, height, grips }: Knob,
  z: number,
  holes: readonly Contour[],
  tolerance: number,
): Feature {
  const chamfer = chamferOf({ diameter, height });
  const outline = (inset: number) =>
    wavyOutline(diameter / 2, grips, (FLUTE_SHARE * diameter) / 2, tolerance, inset);
  const full = outline(0);
  const { first, last, walls, faces } = column(
    [
      { z, outline: full },
      { z: z + height - chamfer, outline: full },
      { z: z + height, outline: outline(chamfer) },
    ],
    'inside',
  );
  return { holes: { top: [first] }, walls, faces: [...faces, { looks: 'up', outer: last, holes }] };
}

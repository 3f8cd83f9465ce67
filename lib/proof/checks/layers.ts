import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/** A bevel of fewer layers than this is no slope but a step. Common practice, no source. */
const BEVEL_LAYERS = 2;
/** A face width this near to whole layers, in layers, is printed as it is. Common practice, no source. */
const NEARLY_WHOLE = 0.1;

/** Rounding of doubles, in layers. */
const ROUNDING = 1e-9;

/**
 * How layers resolve the teeth: the face width, as drawn, against the whole number of layers that a slicer makes of it,
 * and the height of the bevels in layers.
 */
export function layers({ drawnNumbers: { spec } }: PlanFindings): Check {
  const { layer } = spec.printer;
  const whole = Math.max(1, Math.round(spec.faceWidth / layer));
  const off = Math.abs(spec.faceWidth - whole * layer);
  const bevel = (spec.bevel.size * Math.tan((spec.bevel.angle * Math.PI) / 180)) / layer;
  const bevelHolds = bevel === 0 || bevel >= BEVEL_LAYERS - ROUNDING;
  const faceHolds = off <= (NEARLY_WHOLE + ROUNDING) * layer;
  return {
    id: 'layers',
    holds: faceHolds && bevelHolds,
    level: 'note',
    value: off,
    limit: NEARLY_WHOLE * layer,
    unit: 'mm',
    says:
      `the face is ${(spec.faceWidth / layer).toFixed(2)} layers of ${layer} mm high` +
      (faceHolds ? '' : `, so ${(whole * layer).toFixed(2)} mm are printed of ${spec.faceWidth.toFixed(2)}`) +
      (bevel === 0
        ? ''
        : `; a bevel is ${bevel.toFixed(1)} layers high` +
          (bevelHolds ? '' : `, and from ${BEVEL_LAYERS} on it is a slope rather than a step`)),
  };
}

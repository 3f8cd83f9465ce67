import { drawnGap } from '../../fit/compensation.js';
import type { CommonSpec } from '../../spec/types.js';

/** The gap of the file in words, with the drawn one where growth or shrinkage is compensated. */
export function gapAsked(spec: CommonSpec): string {
  const { gap } = spec.fit;
  const drawn = drawnGap(spec);
  return drawn === gap ? `${gap} mm asked` : `${gap} mm asked and ${drawn.toFixed(4)} mm drawn`;
}

import type { FeatureContext } from '../../features/feature.js';
import type { Frame } from '../../features/frame.js';
import { textWords } from '../../features/text.js';
import type { Spec } from '../../spec/types.js';

/** @param part path of the part in the file, such as `sun` */
export function featureContext(
  spec: Spec,
  part: string,
  gear: { teeth: number; rootRadius: number },
  frame: Frame,
): FeatureContext {
  const { lineWidth } = spec.printer;
  return {
    part,
    frame,
    faceWidth: spec.faceWidth,
    rootRadius: gear.rootRadius,
    tolerance: spec.tolerance,
    lineWidth,
    wall: lineWidth,
    words: { ...textWords(spec), teeth: String(gear.teeth) },
  };
}

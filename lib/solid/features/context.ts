import { textWords } from '../../spec/features/words.js';
import type { Spec } from '../../spec/types.js';
import type { Frame } from './frame.js';
import type { TextContext } from './lettering.js';

/** What every feature of a part is made with. Lengths in mm. */
export interface FeatureContext extends TextContext {
  faceWidth: number;
  /** Radius of the root circle as made. */
  rootRadius: number;
  tolerance: number;
}

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

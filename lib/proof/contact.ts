import type { CommonSpec } from '../spec/types.js';
import type { Gear } from '../tooth/gear.js';
import { overlapRatio } from '../train/contactRatio.js';

/** The overlap ratio of a gear of the file; a herringbone's is that of one half, over which its helix runs one way. */
export function overlapOf(spec: CommonSpec, gear: Gear): number {
  return overlapRatio(gear, spec.helix.form === 'herringbone' ? spec.faceWidth / 2 : spec.faceWidth);
}

import type { CommonSpec } from '../spec/types.js';
import type { Gear } from '../tooth/gear.js';
import { overlapRatio, transverseContactRatio } from '../train/contactRatio.js';
import type { PairSizes } from '../train/pair.js';

/**
 * Contact ratios of one mesh as made. A herringbone's overlap is that of one half, over which its helix runs one
 * way.
 */
export function meshContact(
  spec: CommonSpec,
  gear: Gear,
  pair: PairSizes,
): { transverse: number; overlap: number } {
  return { transverse: transverseContactRatio(pair), overlap: overlapOf(spec, gear) };
}

/** The overlap ratio of a gear of the file. */
export function overlapOf(spec: CommonSpec, gear: Gear): number {
  return overlapRatio(gear, spec.helix.form === 'herringbone' ? spec.faceWidth / 2 : spec.faceWidth);
}

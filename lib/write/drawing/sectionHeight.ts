import { boundsOf } from '../../proof/partRecords.js';
import type { Subject } from './subject.js';
import { num } from './svg.js';

/** Where a set is cut across, as a share of the height that its teeth have in common: clear of the bevels and of a herringbone's middle. */
const SHARE = 0.3;

/**
 * The height of the section across the axes and where the teeth begin: others than these parts may reach down to the
 * bed by a hub or a skirt. mm.
 */
export function sectionHeight({ gears, parts }: Pick<Subject, 'gears' | 'parts'>): {
  bottom: number;
  level: number;
} {
  const toothed = parts.filter(({ name }) => gears.some(({ part }) => part === name));
  const boxes = (toothed.length ? toothed : parts).map((part) => boundsOf([part]));
  const bottom = Math.max(...boxes.map(({ min }) => min[2]));
  const top = Math.min(...boxes.map(({ max }) => max[2]));
  // As a reader of the drawing sees it written.
  return { bottom, level: Number(num(bottom + SHARE * (top - bottom))) };
}

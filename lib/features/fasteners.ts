import { word } from '../spec/fields.js';
import { featureRanges } from '../spec/ranges.js';
import { length } from './feature.js';

/** Sizes of metric fasteners, mm. */
export interface Fastener {
  /** Clearance hole diameters: ISO 273, series fine (H12), medium (H13) and coarse (H14). */
  fine: number;
  medium: number;
  coarse: number;
  /** Width across flats s of a hexagon nut, largest: ISO 4032. */
  nutFlats: number;
  /** Height m of that nut, largest: ISO 4032. */
  nutHeight: number;
  /** Head diameter of a countersunk screw, theoretical largest: ISO 10642, 90°. */
  headDiameter: number;
}

/**
 * By thread size. M2 to M6: ISO 273 and ISO 4032 as tabulated publicly (read); heads of ISO 10642 from M3 to M6
 * read, M2 and M2.5 extrapolated as 2.24 d. M8, M10 and M12 from memory.
 */
export const fasteners = {
  M2: row(2.2, 2.4, 2.6, 4, 1.6, 4.48),
  'M2.5': row(2.7, 2.9, 3.1, 5, 2, 5.6),
  M3: row(3.2, 3.4, 3.6, 5.5, 2.4, 6.72),
  M4: row(4.3, 4.5, 4.8, 7, 3.2, 8.96),
  M5: row(5.3, 5.5, 5.8, 8, 4.7, 11.2),
  M6: row(6.4, 6.6, 7, 10, 5.2, 13.44),
  M8: row(8.4, 9, 10, 13, 6.8, 17.92),
  M10: row(10.5, 11, 12, 16, 8.4, 22.4),
  M12: row(13, 13.5, 14.5, 18, 10.8, 26.88),
} satisfies Record<string, Fastener>;

export type ScrewSize = keyof typeof fasteners;

/** Thread sizes, smallest first. */
export const screwSizes = Object.keys(fasteners) as [ScrewSize, ...ScrewSize[]];

/** Diameter of the thread itself, mm: the number in its name. */
export function threadDiameter(size: ScrewSize): number {
  return Number(size.slice(1));
}

function row(
  fine: number,
  medium: number,
  coarse: number,
  nutFlats: number,
  nutHeight: number,
  headDiameter: number,
): Fastener {
  return { fine, medium, coarse, nutFlats, nutHeight, headDiameter };
}

/** Diameter of the hole for an M5 screw, the axle of a crank handle's grip, mm. */
export const AXLE = fasteners.M5.medium;

/** Keys of what takes a screw. */
export const size = word(screwSizes, {
  description: 'Thread size',
  source: 'ISO 273 and ISO 4032 tables',
  examples: ['M4'],
});

export const series = word(['fine', 'medium', 'coarse'], {
  description: 'Series of the clearance hole',
  source: 'ISO 273',
}).default('medium');

/** Heads and nuts, 100 at most, are wider than their holes. */
export const diameter = length(...featureRanges.screwHole, 'Diameter of the hole on the print', 4.5, {
  source: 'ISO 273',
  defaultRule: 'the clearance hole of size and series',
}).optional();

/** Diameter of the hole that these keys ask for, mm. */
export function clearanceHole(file: {
  size: ScrewSize;
  series: 'fine' | 'medium' | 'coarse';
  diameter?: number;
}): number {
  return file.diameter ?? fasteners[file.size][file.series];
}

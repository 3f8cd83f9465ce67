import type { RackSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { GearRecord, PartRecord } from '../sheetTypes.js';
import type { PrintTime } from './printTime.js';
import type { StationPlay } from './stationPlay.js';

/** What is known of a coupon before printing: the contents of its NAME.sheet.json. Lengths in mm, angles in degrees. */
export interface CouponSheet {
  name: string;
  kind: 'coupon';
  /** What all stations share, every default filled in. */
  resolved: Omit<RackSpec, 'name' | 'kind' | 'fit'>;
  stations: StationRecord[];
  /** The pinion of each station. */
  gears: (Omit<GearRecord, 'part'> & { part: string })[];
  checks: Check[];
  parts: PartRecord[];
  printing: {
    growth: number;
    firstLayerGrowth: number;
    shrinkage: number;
    scale: number;
    /** What calipers are put to. */
    sizes: GaugeSize[];
  };
  /** Null when no parts were built. */
  printTime: PrintTime | null;
  cautions: string[];
  adjustments: string[];
  cogweave: string;
  /** Once written: SHA-256, hexadecimal, of every other file of the coupon, by its name. */
  digests?: Record<string, string>;
}

/** One station; nulls where it was not measured. */
export interface StationRecord {
  /** `pinion-1` … */
  part: string;
  gap: {
    /** What is raised beside it. */
    asked: number;
    /** As drawn, growth and shrinkage compensated: what the two figures below are to be. */
    drawn: number;
    /** Least gap found while rolling the profiles through a pitch. */
    rollingLeast: number | null;
    /** Least distance between the finished meshes. */
    body: number | null;
  };
  /** What is left between first layers that stand out, on the print; null where they are far apart. */
  firstLayer: number | null;
  play: StationPlay | null;
}

/** One size of the gauge, as drawn and as expected on the print. */
export interface GaugeSize {
  /** A word to tell sizes of one kind apart in a trial's reading. */
  part: string;
  feature: 'bar' | 'hole';
  drawn: number;
  expected: number;
}

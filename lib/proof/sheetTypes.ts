import type { FeatureReading, LoosePart } from '../features/index.js';
import type { PlanetarySpec, TrainSpec } from '../spec/types.js';
import type { Check } from './check.js';
import type { PlayRecord } from './motion/playRecord.js';
import type { TrainPlay } from './motion/trainPlay.js';

/** What is known of a set before printing: the contents of NAME.sheet.json. Lengths in mm, angles in degrees. */
export type Sheet = PlanetarySheet | TrainSheet;

/** The sheet of a planetary set. */
export type PlanetarySheet = SheetWith<PlanetarySpec, TrainRecord, PlayRecord>;

/** The sheet of a pair, of a rack and pinion, or of one gear. */
export type TrainSheet = SheetWith<TrainSpec, SimpleTrainRecord, TrainPlay> & {
  /** The bar of a rack and pinion. */
  bar?: BarRecord;
};

/** The sheet of one kind of file. */
export type SheetOf<S extends { kind: string }> = S extends { kind: 'planetary' }
  ? PlanetarySheet
  : TrainSheet;

export interface SheetWith<S, Train, Play> {
  name: string;
  /** The whole parameter file with its defaults. */
  resolved: S;
  gears: GearRecord[];
  meshes: MeshRecord[];
  train: Train;
  checks: Check[];
  parts: PartRecord[];
  /** How far parts can move; null when they were not built. */
  play: Play | null;
  printing: PrintingRecord;
  /** Only where the file asks for a panel mount. */
  mounting?: MountingRecord;
  cautions: string[];
  /** Changes made to standard teeth so that they run, each in one sentence. */
  adjustments: string[];
  /** Version of cogweave that made the sheet. */
  cogweave: string;
  /** Once written: SHA-256, hexadecimal, of every other file of the set, by its name. */
  digests?: Record<string, string>;
}

/** One kind of gear of the set. */
export interface GearRecord {
  part: 'sun' | 'planet' | 'ring' | 'pinion' | 'wheel' | 'gear';
  teeth: number;
  /** How many of it the set has. */
  count: number;
  /** Normal module, mm. */
  module: number;
  profileShift: number;
  pitchDiameter: number;
  baseDiameter: number;
  /** As made, after any shortening. */
  tipDiameter: number;
  /** As made, after any deepening. */
  rootDiameter: number;
  helixAngle: number;
  /** Hand of the helix (of the lower half when herringbone); `none` for spur. */
  hand: 'right' | 'left' | 'none';
  /** Span over (for a spur ring: across) `teethSpanned` teeth; nulls where flat anvils cannot measure it. */
  baseTangentLength: {
    teethSpanned: number | null;
    nominal: number | null;
    withGap: number | null;
    /** False where the teeth are too narrow for the anvils to reach across the span (W sin β_b). */
    measurable: boolean;
  };
  /** Over pins or balls (between them, for the ring); nulls where no pin in tenths of a millimetre fits. */
  overPins: { pin: number | null; nominal: number | null; withGap: number | null };
}

/** One kind of mesh of the set. */
export interface MeshRecord {
  between: ['sun', 'planet'] | ['planet', 'ring'] | ['pinion', 'wheel'] | ['pinion', 'bar'];
  /** Of the axes, or of the pinion's axis from the datum line of a bar. */
  centreDistance: number;
  /** Working transverse pressure angle α_wt, degrees. */
  workingPressureAngle: number;
  transverseContactRatio: number;
  overlapRatio: number;
  gap: {
    /** The gap of the file: what is to be printed. */
    asked: number;
    /** The gap as drawn, growth and shrinkage compensated: what the two figures below are to be. */
    drawn: number;
    /** Least gap found while rolling the profiles through a pitch. */
    rollingLeast: number | null;
    /** The same at equal steps through the pitch, over all mates of this kind; left out where nothing was rolled. */
    rollingCurve?: number[];
    /** Least distance between the finished meshes as they are printed, over all mates of this kind. */
    bodies: number | null;
    /** The same through the whole motion. */
    motionLeast: number | null;
  };
  normalBacklash: number;
  /** At the working pitch circle. */
  circumferentialBacklash: number;
}

export interface TrainRecord {
  ratios: Ratios;
  /** Place of each planet's axis and the turn of its body about that axis, degrees. */
  planets: { angle: number; rotation: number }[];
  /** How far the planets' common centre of mass lies off the axis, as a share of the centre distance; 0 is balanced. */
  unbalance: number;
  opening: Opening;
}

/** How a pair or a rack and pinion runs; nothing for one gear. */
export interface SimpleTrainRecord {
  ratios:
    | {
        /** Turns of the pinion for one turn of the wheel, the pinion driving; negative when they turn against each other. */
        pinionDriving: number;
        /** Turns of the wheel for one turn of the pinion. */
        wheelDriving: number;
      }
    | {
        /** Way of the bar for one turn of the pinion, mm. */
        travelPerTurn: number;
      }
    | Record<string, never>;
  planets: [];
}

/** The bar of a rack and pinion, mm. */
export interface BarRecord {
  teeth: number;
  /** Normal module. */
  module: number;
  /** From tooth to tooth along the bar. */
  transversePitch: number;
  length: number;
  /** From its foot to its datum line, to its roots and to its tips. */
  datumHeight: number;
  rootHeight: number;
  tipHeight: number;
  /** Angle of the teeth against the face width, degrees, and the hand of the pinion. */
  helixAngle: number;
  hand: 'right' | 'left' | 'none';
}

/** Turns of the input for one turn of the output; negative when they turn against each other. */
export interface Ratios {
  /** Sun in, carrier out. */
  ringHeld: number;
  /** Sun in, ring out. */
  carrierHeld: number;
  /** Ring in, carrier out. */
  sunHeld: number;
}

export interface Opening {
  /** Widest angle at the set's axis between the tip circles of neighbouring planets, degrees. */
  arc: number;
  /**
   * How far inside the ring's tip circle a long straight edge comes to lie when it is moved inward, square to the
   * middle of the widest opening, until it rests on both planets' tip circles or on the sun's, mm; 0 when it stays
   * outside.
   */
  drop: number;
}

/** What is drawn otherwise than asked, so that the print comes out as asked. */
export interface PrintingRecord {
  /** How far printed walls stand out beyond drawn ones, mm. */
  growth: number;
  /** How far the first layer stands out beyond the walls above it, mm. */
  firstLayerGrowth: number;
  /** Percent by which a print is smaller than drawn. */
  shrinkage: number;
  /** Drawn lengths are this many times the printed ones. */
  scale: number;
  sizes: PrintedSize[];
}

/** One size that calipers can read, as drawn and as expected on the print, mm. */
export interface PrintedSize {
  part: GearRecord['part'] | 'bar' | LoosePart;
  feature:
    | 'tip diameter'
    | 'root diameter'
    | 'base tangent length'
    | 'over pins'
    | 'bore'
    | 'outer diameter'
    | FeatureReading
    | 'length'
    | 'height';
  drawn: number;
  expected: number;
}

/** How a set is mounted in a panel. Lengths in mm, angles in degrees. */
export interface MountingRecord {
  /** Diameter to saw, and thickness of the panel. */
  hole: number;
  panel: number;
  /** Holes to drill; angles from the axis of the first planet. */
  drill: { diameter: number; circle: number; count: number; angles: number[] };
  screw: string;
  nut: string;
  /** What to do, step by step. */
  says: string[];
}

/** One kind of part as made. */
export interface PartRecord {
  name: string;
  count: number;
  /** Of one of them. */
  triangles: number;
  /** Of one of them, mm³. */
  volume: number;
  watertight: boolean;
  /** Box around all of them. */
  bounds: { min: [number, number, number]; max: [number, number, number] };
}

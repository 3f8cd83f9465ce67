import type { Spec } from '../spec/types.js';
import type { Check } from './check.js';
import type { PlayRecord } from './motion/playRecord.js';

/** What is known of a set before printing: the contents of NAME.sheet.json. Lengths in mm, angles in degrees. */
export interface Sheet {
  name: string;
  /** The whole parameter file with its defaults. */
  resolved: Spec;
  gears: GearRecord[];
  meshes: MeshRecord[];
  train: TrainRecord;
  checks: Check[];
  parts: PartRecord[];
  /** How far parts can move; null when they were not built. */
  play: PlayRecord | null;
  printing: PrintingRecord;
  /** Only where the file asks for a panel mount. */
  mounting?: MountingRecord;
  cautions: string[];
  /** Changes made to standard teeth so that they run, each in one sentence. */
  adjustments: string[];
  /** Version of cogweave that made the sheet. */
  cogweave: string;
}

/** One kind of gear of the set. */
export interface GearRecord {
  part: 'sun' | 'planet' | 'ring';
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
  between: ['sun', 'planet'] | ['planet', 'ring'];
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
    /** Least distance between the finished meshes, over all mates of this kind. */
    bodies: number | null;
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
  part: 'sun' | 'planet' | 'ring' | 'clamp-ring' | 'crank-handle';
  feature:
    | 'tip diameter'
    | 'root diameter'
    | 'base tangent length'
    | 'over pins'
    | 'bore'
    | 'outer diameter'
    | 'screw hole'
    | 'countersink'
    | 'nut pocket'
    | 'knob'
    | 'crank socket'
    | 'peg'
    | 'finger hole'
    | 'dimple'
    | 'pocket'
    | 'flange'
    | 'bolt hole'
    | 'opening';
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

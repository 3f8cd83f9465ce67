import type { FittedTrain } from '../../fit/train/fitTrain.js';
import type { GearRecord, MeshRecord } from '../../proof/sheetTypes.js';
import type { Part } from '../../solid/mesh.js';

/** A toothed part in its place, for circles and axes. */
export interface PlacedGear {
  part: string;
  /** Place of its axis, mm. */
  centre: readonly [number, number];
  /** mm. */
  radii: { reference: number; tip: number; root: number };
}

/** Two parts whose teeth mesh. */
export interface Mates {
  /** Names of the parts. */
  between: readonly [string, string];
  /** Where their pitch circles touch, mm. */
  pitchPoint: readonly [number, number];
  /** Normal distance between flanks as asked, mm. */
  gap: number;
  /** The same distance in the transverse plane, mm. */
  gapAcross: number;
}

/** An angle between two directions from the set's axis, degrees; `to` is counter-clockwise of `from`. */
export interface Arc {
  from: number;
  to: number;
}

/** What a drawing shows, whatever kind it is of: finished meshes as they are to be printed, and their data. */
export interface Subject {
  name: string;
  /** What turns in it. */
  train: FittedTrain;
  /** What it is, in words. */
  title: string;
  parts: readonly Part[];
  gears: readonly PlacedGear[];
  records: readonly GearRecord[];
  meshes: readonly MeshRecord[];
  mates: readonly Mates[];
  /** mm. */
  faceWidth: number;
  /** Part whose outer diameter is the size of the whole. */
  around?: string;
  /** Two parts whose distance is shown, and that distance, mm. */
  centreDistance?: { between: readonly [string, string]; value: number };
  /** The widest angle without a planet. */
  opening?: Arc & { value: number };
  /** Further lines of the title block. */
  facts: readonly (readonly [label: string, figure: string])[];
}

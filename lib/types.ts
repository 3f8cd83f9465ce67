/** The types that public functions take and give, beside those named in index.ts. */

export type { BoltHoles } from './features/bolts.js';
export type { CrankSocket } from './features/crank.js';
export type { Flange } from './features/flange.js';
export type { Grip } from './features/grip.js';
export type {
  FeatureReading,
  GearFeatures,
  LoosePart,
  PlanetFeatures,
  RingFeatures,
} from './features/index.js';
export type { Knob } from './features/knob.js';
export type { Mount } from './features/mount.js';
export type { NutPocket } from './features/nut.js';
export type { ScrewHole } from './features/screw.js';
export type { Text } from './features/text.js';
export type { Conditions, Dryness } from './fit/trials/conditions.js';
export type { Disagreement } from './fit/trials/disagreements.js';
export type { Chances, GapAdvice } from './fit/trials/gapAdvice.js';
export type { Figure, Growth } from './fit/trials/growth.js';
export type { NextGap } from './fit/trials/nextGaps.js';
export type { ProfileAdvice } from './fit/trials/profileAdvice.js';
export type { Uncertain } from './fit/trials/spread.js';
export type { Outcome } from './fit/trials/trialSchema.js';
export type { Confirmed } from './proof/motion/confirmed.js';
export type { Axial, PlayRecord, TiltRecord } from './proof/motion/playRecord.js';
export type { TrainPlay } from './proof/motion/trainPlay.js';
export type { WayOut } from './proof/motion/wayOut.js';
export type { NoAdditions, ProveOptions, SomeAdditions } from './proof/proveSet.js';
export type * from './proof/sheetTypes.js';
export type { NamedGeom3 } from './solid/geom3.js';
export type { Copy } from './solid/mesh.js';
export type { Plain } from './spec/plainData.js';
export type * from './spec/types.js';
export type { GearSizes } from './tooth/gear.js';
export type { RackRoot } from './tooth/rackRoot.js';
export type { Arc, Involute, Round, Segment, Trochoid } from './tooth/segments.js';
export type { Held, ResolvedWanted, Span } from './train/planWanted.js';
export type { GivenShifts, ShiftLimit } from './train/shifts/limits.js';
export type { Balance } from './train/shifts/split.js';
export type { FileRecord } from './write/digests.js';
export type { Say } from './write/leftovers.js';
export type { CuttingPlane } from './write/picture/raster.js';
export type { PackageOptions } from './write/threemf.js';

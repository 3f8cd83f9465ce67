/** The public surface of cogweave: flat, named, typed. Lengths in mm, angles in degrees, z up, bed at z = 0. */

export { readGaps } from './fit/coupon/readGaps.js';
export { type Advice, advise as adviseTrials } from './fit/trials/advise.js';
export type { Reading, Trial } from './fit/trials/trialSchema.js';
export { type Trouble, troubles } from './fit/troubles.js';
export { type ProblemCode, problemCodes } from './problemCode.js';
export type { Check, Level } from './proof/check.js';
export type { CouponSheet, GaugeSize, StationRecord } from './proof/coupon/couponSheet.js';
export type { PrintTime } from './proof/coupon/printTime.js';
export { type CouponOptions, proveCoupon } from './proof/coupon/proveCoupon.js';
export type { StationPlay } from './proof/coupon/stationPlay.js';
export { type Plan, planSets } from './proof/planSets.js';
export { inspectSet, type Proved, proveSet } from './proof/proveSet.js';
export { type Problem, Refusal } from './refusal.js';
export type { Additions, Solids } from './solid/additions.js';
export { buildSet } from './solid/buildSet.js';
export { fromGeom3, type Geom3, toGeom3 } from './solid/geom3.js';
export type { AddedSolid, Mesh, Part } from './solid/mesh.js';
export { specJsonSchema } from './spec/jsonSchema.js';
export type { Profile } from './spec/profileFile.js';
export { readProfile, readSpec } from './spec/readSpec.js';
export { resolveSpec } from './spec/resolveSpec.js';
export type { Gear } from './tooth/gear.js';
export { type ProfileCuts, type ToothProfile, toothProfile } from './tooth/profile.js';
export type { NearMiss, PlanRow } from './train/planRow.js';
export type { WantedSets } from './train/planWanted.js';
export {
  type RefusedShifts,
  type ShiftCounts,
  type ShiftForm,
  type ShiftOptions,
  type SolvedShifts,
  solveShifts,
} from './train/solveShifts.js';
export type * from './types.js';
export { version } from './version.js';
export { type MadeCoupon, type MakeCouponOptions, makeCoupon } from './write/coupon/makeCoupon.js';
export { drawSet } from './write/drawing.js';
export { type Made, type MakeOptions, makeSet } from './write/makeSet.js';
export { type PictureOptions, renderPicture } from './write/picture.js';
export { encodeStl, stlChunks } from './write/stl.js';
export { encode3mf, threemfChunks } from './write/threemf.js';
export { addToLog as addTrial } from './write/trials/addToLog.js';
export { readLog as readTrialLog } from './write/trials/readLog.js';

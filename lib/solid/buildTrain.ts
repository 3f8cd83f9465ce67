import { trainHandle } from '../fit/handleSeat.js';
import { type FittedTrain, fitDrawn, fitTrain, type PlacedGear } from '../fit/trains/fitTrain.js';
import { trainNumbers } from '../fit/trains/trainNumbers.js';
import type { TrainSpec } from '../spec/types.js';
import { radians } from '../tooth/gear.js';
import { barBody } from './bar/barBody.js';
import { barSweep } from './bar/barSweep.js';
import type { Wall } from './blank.js';
import { featureContext } from './features/context.js';
import { crankHandle, handleInUse } from './features/crankHandle.js';
import { gearBlank } from './features/gearBlank.js';
import { ringBlank } from './features/ringBlank.js';
import { gearBody } from './gearBody.js';
import type { InUse } from './inUse.js';
import type { Part } from './mesh.js';
import { placed } from './place.js';
import { soundBody } from './soundBody.js';
import type { Sweep } from './sweep/helix.js';
import type { KnownPitches } from './teeth.js';

/**
 * Every part of a pair (`pinion`, `wheel`), of a rack and pinion (`pinion`, `bar`), or the one `gear`, as closed meshes
 * in the place where they are printed, a `crank-handle` beside them if one is asked for, growth and shrinkage compensated.
 * @throws Refusal when the teeth cannot be made
 */
export function buildTrain(spec: TrainSpec): Part[] {
  return buildFittedTrain(fitDrawn(fitTrain(trainNumbers(spec))));
}

/** `buildTrain` for a train that is fitted as it is to be drawn (see `fitDrawn`). */
export function buildFittedTrain(train: FittedTrain): Part[] {
  const { spec, gears, bar } = train;
  const known: KnownPitches = new Map();
  const parts: Part[] = gears.map((one) => {
    const body = soundBody(one.part, spec.tolerance, (tolerance) =>
      gearBody(one.profile, trainSweep(train, one), wallOf(train, one, tolerance), tolerance, known),
    );
    return { name: one.part, mesh: placed(body, one.rotation, one.centre) };
  });
  if (bar) parts.push({ name: 'bar', mesh: barBody(bar, barSweep(spec, bar), spec.tolerance) });
  parts.push(...handles(train));
  return parts;
}

/** Share of the tooth, from tip to root, that a bevel may take; it must leave some involute in the end face. */
const MOST_BEVEL = 0.9;

/** How a gear of a train is swept. */
export function trainSweep({ spec }: FittedTrain, { profile, hand }: PlacedGear): Sweep {
  return {
    form: spec.helix.form,
    faceWidth: spec.faceWidth,
    hand,
    bevelSize: Math.min(spec.bevel.size, MOST_BEVEL * Math.abs(profile.tipRadius - profile.formRadius)),
    bevelAngle: radians(spec.bevel.angle),
  };
}

/** The walls of all gears of a train. @throws Refusal where letters find no room */
export function trainWalls(train: FittedTrain): Wall[] {
  return train.gears.map((one) => wallOf(train, one, train.spec.tolerance));
}

function wallOf({ spec }: FittedTrain, one: PlacedGear, tolerance: number): Wall {
  const { part, gear, profile, rim, bore, features, rotation, hand } = one;
  const { rootRadius } = profile;
  const frame = { rotation, mirrored: hand === 'left' };
  const context = featureContext({ ...spec, tolerance }, part, { teeth: gear.teeth, rootRadius }, frame);
  return gear.internal
    ? ringBlank(features, rootRadius + rim, context)
    : gearBlank({ bore, ...features }, context);
}

/** The handle of a crank lies beside the parts, towards −y, clear of a bar there. */
function handles(train: FittedTrain): Part[] {
  const found = handleOf(train);
  if (!found) return [];
  const { crank, length, seat } = found;
  const mesh = crankHandle(crank, length, seat, reachOf(train), train.spec.tolerance);
  return [{ name: 'crank-handle', mesh }];
}

/** How the handle of a train gets from the bed onto its gear, and which gear that is; null without one. */
export function trainInUse(train: FittedTrain): { gear: string; inUse: InUse } | null {
  const found = handleOf(train);
  if (!found) return null;
  const { crank, length, seat } = found;
  return { gear: seat.gear, inUse: handleInUse(crank, length, seat, reachOf(train)) };
}

function handleOf(train: FittedTrain) {
  const seat = trainHandle(train);
  const crank = train.gears.find(({ part }) => part === seat?.gear)?.features.crank;
  if (!seat || crank?.handle === undefined) return null;
  return { crank, length: crank.handle, seat };
}

/** How far the parts reach towards −y, mm. */
function reachOf({ gears, bar }: FittedTrain): number {
  const radii = gears.map(({ gear, profile, rim, features }) =>
    gear.internal
      ? Math.max(profile.rootRadius + rim, (features.flange?.diameter ?? 0) / 2)
      : profile.tipRadius,
  );
  return Math.max(...radii, bar ? bar.backing - bar.datum - bar.profile.root : 0);
}

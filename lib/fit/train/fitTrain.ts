import { Refusal, refuse } from '../../refusal.js';
import type { Spec } from '../../spec/types.js';
import { type BarProfile, barProfile } from '../../tooth/bar.js';
import { type ToothProfile, toothProfile } from '../../tooth/profile.js';
import { type CarrierSizes, carrierSizes } from '../carrier/carrierSizes.js';
import { drawnWall } from '../compensation.js';
import { type GearEnd, gearEnds, type Lipped } from '../gearEnds.js';
import { drawnTrain } from './drawnTrain.js';
import { barMesh, gearMesh } from './meshSizes.js';
import type { Place } from './place.js';
import { isPlanetary } from './planetary.js';
import { fittedSetOf } from './setOf.js';
import { gearIn, type Train, type TrainBar, type TrainGear, type TrainMesh } from './train.js';
import { arrangementOf } from './trainNumbers.js';

/** A train with its teeth drawn and its parts in their places at z = 0. Lengths in mm, angles in radians. */
export interface FittedTrain<S extends Spec = Spec> extends Train<S> {
  gears: PlacedGear[];
  bar: PlacedBar | null;
  /** What carries the planets; null for nothing. */
  carrier: CarrierSizes | null;
}

/** A kind of gear with its teeth, placed. */
export interface PlacedGear extends TrainGear {
  profile: ToothProfile;
  /** Bevels and lips. */
  end: GearEnd;
  /** Of each copy. */
  places: Place[];
}

/** A bar with its teeth, placed below the pinion, teeth towards it. */
export interface PlacedBar extends TrainBar {
  profile: BarProfile;
  /** y of its datum line. */
  datum: number;
  /** x of the first tooth's middle at z = 0; the others follow at whole pitches towards +x. */
  firstTooth: number;
  /** x of its square ends. */
  ends: [number, number];
  /** How far the teeth are carried towards +x for one mm along the axis, in the lower half of a herringbone. */
  slope: number;
}

/**
 * Teeth with their relief, every part in the place where all meshes meet at once, and what carries it.
 * @param wall least width of the walls of a carrier, mm [that of two lines]
 * @throws Refusal when a tooth comes to a point, or lips or a carrier find no room
 */
export function fitTrain<S extends Spec>(train: Train<S>, wall?: number): FittedTrain<S> {
  const places = arrangementOf(train.spec).places(train);
  const toothed = train.gears.map((one) => ({ ...one, profile: profileOf(one) }));
  const ends = gearEnds(train.spec, toothed, lippedOf(train));
  const gears = toothed.map((one, i): PlacedGear => ({ ...one, end: ends[i], places: places[i] }));
  const bar = train.bar && placedBar(train, train.bar);
  const fitted = {
    ...train,
    gears,
    bar,
    meshes: train.meshes.map((mesh) => meshAsMade(mesh, gears, bar)),
    carrier: null,
  };
  return isPlanetary(fitted)
    ? { ...fitted, carrier: carrierSizes(fitted.spec, fittedSetOf(fitted), wall) }
    : fitted;
}

function lippedOf(train: Train): Lipped | null {
  if (!isPlanetary(train)) return null;
  const { spec, meshes } = train;
  const { lips } = spec;
  return lips ? { spec: { ...spec, lips }, centreDistance: meshes[0].pair!.centreDistance } : null;
}

/**
 * A fitted train as it is drawn; the very same one where nothing is compensated.
 * @throws Refusal where walls set back by the growth leave no teeth
 */
export function fitDrawn<S extends Spec>(asked: FittedTrain<S>): FittedTrain<S> {
  const drawn = drawnTrain<S>(asked);
  if (drawn === asked) return asked;
  try {
    return fitTrain(drawn, drawnWall(asked.spec));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { growth } = asked.spec.printer;
    const rule = `walls set back by it cannot be drawn: ${error.rule}`;
    refuse('growth-too-great', 'printer.growth', growth, rule, [0]);
  }
}

function profileOf({ part, gear, relief, radii }: TrainGear): ToothProfile {
  const { tip, root, active, straight } = radii;
  const cuts = { relief, tipRadius: tip, rootRadius: root, activeRadius: active, straight };
  return toothProfile(gear, cuts, part);
}

function placedBar({ spec, meshes: [mesh] }: Train, one: TrainBar): PlacedBar {
  const profile = barProfile(one.bar, one);
  const pitch = profile.transversePitch;
  const slope = (one.hand === 'right' ? 1 : -1) * Math.tan(profile.helixAngle);
  const lean = (slope * spec.faceWidth) / (spec.helix.form === 'herringbone' ? 2 : 1);
  const half = (one.teeth * pitch) / 2;
  const [low, high] = [-half + Math.min(0, lean), half + Math.max(0, lean)];
  const spare = (one.length - (high - low)) / 2;
  return {
    ...one,
    profile,
    datum: -mesh.centreDistance,
    firstTooth: pitch / 2 - half,
    ends: [low - spare, high + spare],
    slope,
  };
}

/** Contact as it is with roots and their roundings as drawn. */
function meshAsMade(mesh: TrainMesh, gears: readonly PlacedGear[], bar: PlacedBar | null): TrainMesh {
  const [one, two] = mesh.between.map((part) => {
    if (part === 'bar') return null;
    const { gear, profile } = gearIn({ gears }, part);
    return { gear, tip: profile.tipRadius, form: profile.formRadius };
  });
  const made = two
    ? gearMesh(mesh.between, one!, two)
    : barMesh(one!, { tip: bar!.tip, form: bar!.profile.form });
  return { ...made, centreDistance: mesh.centreDistance };
}

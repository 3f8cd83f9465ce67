import { Refusal, refuse } from '../../spec/refusal.js';
import { type BarProfile, barProfile } from '../../tooth/bar.js';
import { type ToothProfile, toothProfile } from '../../tooth/profile.js';
import { transverseContactRatio } from '../../train/contactRatio.js';
import { pairSizes } from '../../train/pair.js';
import { rackMesh } from '../../train/rackMesh.js';
import { drawnTrain } from './drawnTrain.js';
import type { Train, TrainBar, TrainGear, TrainMesh } from './train.js';

/** A train with its teeth drawn and its parts in their places at z = 0. Lengths in mm, angles in radians. */
export interface FittedTrain extends Train {
  gears: PlacedGear[];
  bar: PlacedBar | null;
}

/** A gear with its teeth, placed. */
export interface PlacedGear extends TrainGear {
  profile: ToothProfile;
  centre: [number, number];
  /** Angle of one of its tooth centres. */
  rotation: number;
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
 * Teeth with their relief, the pinion at the origin: a wheel beside it at +x, a wheel around it with its axis at −x,
 * a bar below it with its middle under the pinion.
 * @throws Refusal when a tooth comes to a point
 */
export function fitTrain(train: Train): FittedTrain {
  const gears = train.gears.map((one, i) => placedGear(train, one, i));
  const bar = train.bar && placedBar(train, train.bar);
  return { ...train, gears, bar, mesh: train.mesh && meshAsMade(train.mesh, gears, bar) };
}

/**
 * A fitted train as it is drawn; the very same one where nothing is compensated.
 * @throws Refusal where walls set back by the growth leave no teeth
 */
export function fitDrawn(asked: FittedTrain): FittedTrain {
  const drawn = drawnTrain(asked);
  if (drawn === asked) return asked;
  try {
    return fitTrain(drawn);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { growth } = asked.spec.printer;
    refuse('printer.growth', growth, `walls set back by it cannot be drawn: ${error.rule}`, [0]);
  }
}

function placedGear({ mesh, bar }: Train, one: TrainGear, index: number): PlacedGear {
  const profile = profileOf(one);
  const half = Math.PI / one.gear.teeth;
  if (index === 0) {
    // Over a bar with an even number of teeth a tooth of the pinion points down, into the space in the bar's middle.
    const rotation = bar ? -Math.PI / 2 + (bar.teeth % 2 ? half : 0) : 0;
    return { ...one, profile, centre: [0, 0], rotation };
  }
  const distance = mesh!.centreDistance;
  return one.gear.internal
    ? { ...one, profile, centre: [-distance, 0], rotation: half }
    : { ...one, profile, centre: [distance, 0], rotation: Math.PI + half };
}

/** @throws Refusal that names the part as the file does: every gear with teeth inside is a ring elsewhere */
function profileOf({ part, gear, relief, radii }: TrainGear): ToothProfile {
  const { tip, root, active, straight } = radii;
  try {
    return toothProfile(gear, { relief, tipRadius: tip, rootRadius: root, activeRadius: active, straight });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { parameter, value, rule, nearest } = error;
    refuse(parameter.replace(/^ring\b/, part), value, rule.replace('the ring', `the ${part}`), nearest);
  }
}

function placedBar({ spec, mesh }: Train, one: TrainBar): PlacedBar {
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
    datum: -mesh!.centreDistance,
    firstTooth: pitch / 2 - half,
    ends: [low - spare, high + spare],
    slope,
  };
}

/** Contact as it is with roots and their roundings as drawn. */
function meshAsMade(mesh: TrainMesh, gears: readonly PlacedGear[], bar: PlacedBar | null): TrainMesh {
  const [one, two] = gears;
  if (bar) {
    const { profile, tip } = bar;
    const made = rackMesh(one.gear, one.profile.tipRadius, tip, one.profile.formRadius, profile.form);
    return { ...mesh, transverseContactRatio: made.transverseContactRatio };
  }
  const pair = pairSizes(one.gear, two.gear, {
    tipRadius1: one.profile.tipRadius,
    tipRadius2: two.profile.tipRadius,
    formRadius1: one.profile.formRadius,
    formRadius2: two.profile.formRadius,
  });
  return { ...mesh, transverseContactRatio: transverseContactRatio(pair), pair };
}

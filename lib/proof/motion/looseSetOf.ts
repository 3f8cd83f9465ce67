import { liftOf } from '../../fit/carrier/carrierSizes.js';
import type { LooseFrame, LooseGear, LooseSet } from '../../fit/play/looseSet.js';
import type { LooseMesh } from '../../fit/play/meshContacts.js';
import type { FittedTrain, PlacedGear } from '../../fit/train/fitTrain.js';
import { setOf } from '../../fit/train/setOf.js';
import { gearIn } from '../../fit/train/train.js';
import type { PlanetarySpec, Spec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';

/** The two of a train's one mesh, in the place and turn in which they are printed. */
export function looseMeshOf(train: FittedTrain): LooseMesh {
  const { spec, bar, meshes } = train;
  const [{ between, pair }] = meshes;
  const [first] = looseGears(gearIn(train, between[0]));
  const frame = frameOf(spec);
  if (bar) return { ...frame, first, bar: { ...bar, name: bar.part } };
  return { ...frame, first, second: looseGears(gearIn(train, between[1]))[0], pair: pair! };
}

function frameOf({ helix, faceWidth, fit, bevel }: Spec): LooseFrame {
  return { form: helix.form, faceWidth, gap: fit.gap, bevelAngle: radians(bevel.angle) };
}

/** A fitted set as its parts may move in it, every part in the place and turn in which it is printed. */
export function looseSetOf(train: FittedTrain<PlanetarySpec>): LooseSet {
  const { spec, carrier } = train;
  const { inner, outer } = setOf(train);
  const [sun, planets, ring] = ['sun', 'planet', 'ring'].map((part) => looseGears(gearIn(train, part)));
  return {
    ...frameOf(spec),
    carrier,
    lift: liftOf(carrier),
    sun: sun[0],
    planets,
    ring: ring[0],
    inner,
    outer,
  };
}

function looseGears({ profile, hand, end, places }: PlacedGear): LooseGear[] {
  const { bevelSize, lips } = end;
  return places.map(({ name, centre, rotation }) => {
    return { name, profile, centre, rotation, hand: hand === 'right' ? 1 : -1, bevelSize, lips };
  });
}

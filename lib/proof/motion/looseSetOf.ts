import { liftOf } from '../../fit/carrier/carrierSizes.js';
import type { LooseGear, LooseSet } from '../../fit/play/looseSet.js';
import type { FittedTrain, PlacedGear } from '../../fit/train/fitTrain.js';
import { setOf } from '../../fit/train/setOf.js';
import { gearIn } from '../../fit/train/train.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';

/** A fitted set as its parts may move in it, every part in the place and turn in which it is printed. */
export function looseSetOf(train: FittedTrain<PlanetarySpec>): LooseSet {
  const { spec, carrier } = train;
  const { inner, outer } = setOf(train);
  const [sun, planets, ring] = ['sun', 'planet', 'ring'].map((part) => looseGears(gearIn(train, part)));
  return {
    form: spec.helix.form,
    faceWidth: spec.faceWidth,
    gap: spec.fit.gap,
    bevelAngle: radians(spec.bevel.angle),
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

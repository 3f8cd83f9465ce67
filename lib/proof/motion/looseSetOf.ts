import { liftOf } from '../../fit/carrier/carrierSizes.js';
import type { FittedSet } from '../../fit/fitSet.js';
import type { LooseGear, LooseSet } from '../../fit/play/looseSet.js';
import { sweepOf } from '../../solid/buildSet.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';
import { polar } from '../../tooth/polar.js';

/** A fitted set as its parts may move in it, every part in the place and turn in which it is printed. */
export function looseSetOf(spec: PlanetarySpec, set: FittedSet): LooseSet {
  const gear = (
    name: string,
    part: 'sun' | 'planet' | 'ring',
    rotation: number,
    centre: readonly [number, number],
  ): LooseGear => {
    const profile = set.profiles[part];
    const { hand } = sweepOf(spec, set, part);
    const { bevelSize, lips } = set.ends[part];
    return { name, profile, centre, rotation, hand: hand === 'right' ? 1 : -1, bevelSize, lips };
  };
  const { centreDistance } = set;
  return {
    form: spec.helix.form,
    faceWidth: spec.faceWidth,
    gap: spec.fit.gap,
    bevelAngle: radians(spec.bevel.angle),
    carrier: set.carrier,
    lift: liftOf(set.carrier),
    sun: gear('sun', 'sun', 0, [0, 0]),
    planets: set.planets.map(({ angle, rotation }, i) =>
      gear(`planet-${i + 1}`, 'planet', rotation, polar(centreDistance, angle)),
    ),
    ring: gear('ring', 'ring', set.ringRotation, [0, 0]),
    inner: set.inner,
    outer: set.outer,
  };
}

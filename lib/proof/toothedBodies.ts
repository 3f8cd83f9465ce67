import { liftOf } from '../fit/carrier/carrierSizes.js';
import type { FittedTrain } from '../fit/train/fitTrain.js';
import { barSweep } from '../solid/bar/barSweep.js';
import { sweepOf } from '../solid/buildTrain.js';
import { barDeviation } from './barDeviation.js';
import { type ToothedBody, toothedGear } from './bodies.js';

/** How each toothed part of a train is held against its exact surfaces. */
export function toothedBodies(train: FittedTrain): ToothedBody[] {
  const { spec, gears, bar, carrier } = train;
  const lift = liftOf(carrier);
  const { tolerance } = spec;
  const bodies = gears.flatMap((one) => {
    const sweep = sweepOf(train, one);
    const { profile } = one;
    return one.places.map(({ name, rotation, centre }) =>
      toothedGear({ first: name, profile, sweep, tolerance, rotation, centre, lift }),
    );
  });
  if (!bar) return bodies;
  const sweep = barSweep(spec, bar);
  return [...bodies, { first: 'bar', deviation: (mesh, changed) => barDeviation(mesh, bar, sweep, changed) }];
}

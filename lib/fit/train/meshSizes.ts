import { type Gear, gearSizes } from '../../tooth/gear.js';
import { transverseContactRatio } from '../../train/contactRatio.js';
import { pairSizes } from '../../train/pair.js';
import { rackMesh } from '../../train/rackMesh.js';
import type { TrainMesh } from './train.js';

/** One side of a mesh: its gear, and how far it reaches as made; `form` is where its true involute begins [its base circle]. */
interface MeshGear {
  gear: Gear;
  tip: number;
  form?: number;
}

/** What two gears in mesh come to. @throws Refusal when they have no working pressure angle */
export function gearMesh(between: TrainMesh['between'], one: MeshGear, two: MeshGear): TrainMesh {
  const pair = pairSizes(one.gear, two.gear, {
    tipRadius1: one.tip,
    tipRadius2: two.tip,
    ...(one.form !== undefined && { formRadius1: one.form }),
    ...(two.form !== undefined && { formRadius2: two.form }),
  });
  const { centreDistance, workingPressureAngle } = pair;
  return {
    between,
    centreDistance,
    workingPressureAngle,
    transverseContactRatio: transverseContactRatio(pair),
    pair,
  };
}

/**
 * What a pinion and a bar come to.
 * @param bar heights of its tips, and down to which its flank is straight [as deep as needed]
 */
export function barMesh(pinion: MeshGear, bar: { tip: number; form?: number }): TrainMesh {
  const made = rackMesh(pinion.gear, pinion.tip, bar.tip, pinion.form, bar.form);
  return {
    between: ['pinion', 'bar'],
    centreDistance: made.centreDistance,
    workingPressureAngle: gearSizes(pinion.gear).transversePressureAngle,
    transverseContactRatio: made.transverseContactRatio,
    pair: null,
  };
}

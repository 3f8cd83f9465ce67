import type { RackSpec } from '../../spec/types.js';
import type { Arrangement } from './arrangement.js';
import { besideBar } from './besideBar.js';
import { barMesh } from './meshSizes.js';
import { alone } from './place.js';
import { reliefOf } from './train.js';
import { gearOf, trainGear } from './trainGear.js';

/** A pinion at the origin and a bar below it, its middle under the pinion. */
export const rack: Arrangement<RackSpec> = {
  numbers(spec) {
    const gear = gearOf(spec, spec.pinion, false);
    const { radii, tip, root, active, adjustments } = besideBar(spec, gear, 'pinion');
    const { module, pressureAngle, helix } = spec;
    const { hand } = helix;
    return {
      spec,
      gears: [trainGear(spec, spec.pinion, { part: 'pinion', way: 1, hand, gear, radii, share: 'share' })],
      bar: {
        part: 'bar',
        bar: { module, pressureAngle, helixAngle: helix.angle, rack: spec.rack },
        ...spec.bar,
        relief: reliefOf(spec.fit, 'rest'),
        tip,
        root,
        active,
        hand,
      },
      meshes: [barMesh({ gear, tip: radii.tip }, { tip })],
      adjustments,
    };
  },

  /** Over a bar with an even number of teeth a tooth of the pinion points down, into the space in the bar's middle. */
  places({ gears: [{ gear }], bar }) {
    return [alone('pinion', -Math.PI / 2 + (bar!.teeth % 2 ? Math.PI / gear.teeth : 0))];
  },
};

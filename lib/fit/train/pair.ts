import type { PairSpec } from '../../spec/types.js';
import { pairBodyRoom } from '../bodyRoom.js';
import { madeRadii } from '../madeRadii.js';
import type { Arrangement } from './arrangement.js';
import { gearMesh } from './meshSizes.js';
import { pairGears } from './pairGears.js';
import { alone } from './place.js';
import { reliefOf, type TrainGear } from './train.js';
import { opposite, trainGear } from './trainGear.js';

/** Two gears: the pinion at the origin, a wheel beside it at +x, or around it with its axis at −x. */
export const pair: Arrangement<PairSpec> = {
  numbers(spec) {
    const { pinion, wheel } = pairGears(spec);
    const { hand } = spec.helix;
    const { radii, adjustments } = madeRadii(spec, { pinion, wheel }, [['pinion', 'wheel']], {
      pinion: reliefOf(spec.fit, 'share'),
      wheel: reliefOf(spec.fit, 'rest'),
    });
    pairBodyRoom(spec, radii);
    const second = { part: 'wheel', gear: wheel, radii: radii.wheel, share: 'rest' } as const;
    const gears: TrainGear[] = [
      trainGear(spec, spec.pinion, {
        part: 'pinion',
        way: 1,
        hand,
        gear: pinion,
        radii: radii.pinion,
        share: 'share',
      }),
      spec.wheel.internal
        ? trainGear(spec, spec.wheel, { ...second, way: 1, hand })
        : trainGear(spec, spec.wheel, { ...second, way: -1, hand: opposite(hand) }),
    ];
    const mesh = gearMesh(
      ['pinion', 'wheel'],
      { gear: pinion, tip: radii.pinion.tip },
      { gear: wheel, tip: radii.wheel.tip },
    );
    return { spec, gears, bar: null, meshes: [mesh], adjustments };
  },

  places({ gears: [, { gear }], meshes: [{ centreDistance }] }) {
    const half = Math.PI / gear.teeth;
    return [
      alone('pinion', 0),
      gear.internal
        ? alone('wheel', half, [-centreDistance, 0])
        : alone('wheel', Math.PI + half, [centreDistance, 0]),
    ];
  },
};

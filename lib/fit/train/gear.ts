import type { GearSpec } from '../../spec/types.js';
import { madeRadii } from '../madeRadii.js';
import type { Arrangement } from './arrangement.js';
import { besideBar } from './besideBar.js';
import { alone } from './place.js';
import { reliefOf } from './train.js';
import { gearOf, trainGear } from './trainGear.js';

/**
 * One gear by itself: with teeth outside made for a bar, which asks more of a gear's roots than any mate with teeth
 * outside; with teeth inside made for the smallest gear that is to run in it.
 */
export const gear: Arrangement<GearSpec> = {
  numbers(spec) {
    const { gear: asked, helix } = spec;
    const own = gearOf(spec, asked, asked.internal);
    const toothed = { part: 'gear', way: 1, hand: helix.hand, gear: own, share: 'share' } as const;
    const common = { spec, bar: null, meshes: [] };
    if (!asked.internal) {
      const { radii, adjustments } = besideBar(spec, own, 'gear');
      return {
        ...common,
        gears: [trainGear(spec, asked, { ...toothed, radii })],
        adjustments: adjustments.filter(({ part }) => part === 'gear'),
      };
    }
    const mate = { ...own, teeth: asked.mateTeeth, internal: false };
    const { radii, adjustments } = madeRadii(spec, { mate, gear: own }, [['mate', 'gear']], {
      mate: reliefOf(spec.fit, 'rest'),
      gear: reliefOf(spec.fit, 'share'),
    });
    return {
      ...common,
      gears: [trainGear(spec, asked, { ...toothed, radii: radii.gear })],
      adjustments: adjustments
        .filter(({ part }) => part === 'gear')
        .map((one) => ({ ...one, mateTeeth: asked.mateTeeth })),
    };
  },

  places: () => [alone('gear', 0)],
};

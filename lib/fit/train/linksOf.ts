import type { Link } from '../../train/speeds.js';
import { CARRIER } from '../play/carrierContacts.js';
import { gearIn, type Train } from './train.js';

/** The meshes between gears of a train, as their speeds follow from them. */
export function linksOf(train: Train): Link[] {
  return train.meshes.flatMap(({ between, pair }): Link[] => {
    if (!pair) return [];
    const [one, two] = between.map((part) => gearIn(train, part));
    const about = one.orbits || two.orbits ? { about: CARRIER } : {};
    return [{ between, teeth: [one.gear.teeth, two.gear.teeth], internal: pair.internal, ...about }];
  });
}

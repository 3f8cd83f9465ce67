import type { TrainMesh } from '../../fit/train/train.js';
import { degrees } from '../../tooth/gear.js';
import { trochoidMargin } from '../../train/interference.js';
import type { Check } from '../check.js';

/** Tips of a ring and of a gear in it pass each other where their tip circles cross. Source: see `trochoidMargin`. */
export function trochoidInterference({ between: [first, second], pair }: TrainMesh): Check {
  const margin = degrees(trochoidMargin(pair!));
  // Minus infinity is a tip circle that encloses the other one: such gears cannot lie in each other at all.
  const apart = margin === Number.POSITIVE_INFINITY;
  return {
    id: 'trochoid-interference',
    holds: apart || margin >= 0,
    level: 'must',
    value: Number.isFinite(margin) ? margin : null,
    limit: 0,
    unit: 'deg',
    says: apart
      ? `the tip circles of ${first} and ${second} do not cross`
      : !Number.isFinite(margin)
        ? `the ${first} finds no room within the tips of the ${second}`
        : `tips of ${first} and ${second} pass each other with ${margin.toFixed(3)}° of the ${second} to spare`,
  };
}

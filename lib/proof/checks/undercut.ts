import type { Spec } from '../../spec/types.js';
import type { Gear } from '../../tooth/gear.js';
import { leastProfileShift, leastTeeth } from '../../tooth/undercut.js';
import type { Check } from '../check.js';
import { leastBy } from '../leastBy.js';
import { clearOfUndercut } from '../nearest/clearOfUndercut.js';
import { sayWays } from '../nearest/words.js';

/**
 * Profile shift to spare before the basic rack cuts into the involute, the least of all gears with teeth outside.
 * Source: DIN 3960 / handbooks, x_min = h_a* − z sin² α_t / (2 cos β) (from memory).
 */
export function undercut(spec: Spec, gears: readonly { part: string; gear: Gear }[]): Check {
  const spare = (gear: Gear) => gear.profileShift - leastProfileShift(gear);
  const { part, gear } = leastBy(gears, (one) => spare(one.gear));
  const least = leastProfileShift(gear);
  const holds = spare(gear) >= 0;
  const ways = holds ? [] : clearOfUndercut(spec, gears);
  return {
    id: 'undercut',
    holds,
    level: 'should',
    value: gear.profileShift,
    limit: least,
    unit: 'module',
    says: holds
      ? `the rack leaves the involute whole: ${part} with ${gear.teeth} teeth needs a profile shift of at least ${least.toFixed(3)}`
      : `${part}, ${gear.teeth} teeth: the root is undercut below ${leastTeeth(gear).toFixed(2)} teeth without shift; ` +
        (ways.length ? `${sayWays(ways)} avoids it` : 'more teeth avoid it'),
  };
}

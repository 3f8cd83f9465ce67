import { leastProfileShift, leastTeeth } from '../../tooth/undercut.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/**
 * Profile shift to spare before the basic rack cuts into the involute, the less of sun and planet.
 * Source: DIN 3960 / handbooks, x_min = h_a* − z sin² α_t / (2 cos β) (from memory).
 */
export function undercut({ gears }: PlanFindings): Check {
  const spare = (part: 'sun' | 'planet') => gears[part].profileShift - leastProfileShift(gears[part]);
  const part = spare('sun') <= spare('planet') ? 'sun' : 'planet';
  const gear = gears[part];
  const least = leastProfileShift(gear);
  const holds = spare(part) >= 0;
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
        `a profile shift of ${(Math.ceil(least * 1000) / 1000).toFixed(3)} or more, or a larger helix angle, avoids it`,
  };
}

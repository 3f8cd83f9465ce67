import { degrees } from '../../tooth/gear.js';
import { trochoidMargin } from '../../train/interference.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';

/** Tips of planet and ring pass each other where their tip circles cross. Source: see `trochoidMargin`. */
export function trochoidInterference({ outer }: ToothFindings): Check {
  const margin = degrees(trochoidMargin(outer));
  const apart = !Number.isFinite(margin);
  return {
    id: 'trochoid-interference',
    holds: apart || margin >= 0,
    level: 'must',
    value: apart ? null : margin,
    limit: 0,
    unit: 'deg',
    says: apart
      ? 'the tip circles of planet and ring do not cross'
      : `tips of planet and ring pass each other with ${margin.toFixed(3)}° of the ring to spare`,
  };
}

import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/** The ring of a panel mount, as it comes out, goes through the sawn hole with its clearance all round. */
export function mount({ numbers: { gears } }: PlanFindings): Check[] {
  const ring = gears.find(({ features }) => features.mount);
  const asked = ring?.features.mount;
  if (!asked) return [];
  const outer = ring.radii.root + ring.rim;
  const value = asked.hole / 2 - outer;
  const holds = value >= asked.clearance - 1e-9;
  const least = Math.ceil(20 * (outer + asked.clearance)) / 10;
  return [
    {
      id: 'mount',
      holds,
      level: 'must',
      value,
      limit: asked.clearance,
      unit: 'mm',
      says:
        `the ring, ${(2 * outer).toFixed(2)} mm across, stands ${value.toFixed(2)} mm from the wall of a hole of ${asked.hole} mm` +
        (holds ? '' : `; ${ring.key}.mount.hole ${least} works`),
    },
  ];
}

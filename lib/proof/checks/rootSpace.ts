import type { ToothProfile } from '../../tooth/profile.js';
import { pointOn } from '../../tooth/segments.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/**
 * Width of the tooth space next to its root, where the root rounding ends: a space narrower than an extruded line
 * fills up. Measured as the chord between the two roundings of a space at the form circle.
 */
export function rootSpace({ spec, set }: ToothFindings): Check {
  const spaces = (['sun', 'planet', 'ring'] as const).map((part) => ({
    part,
    width: rootSpaceWidth(set.profiles[part]),
  }));
  return rootSpaceOf(spaces, spec.limits.toothFeature);
}

/** Chord between the two roundings of a tooth space at the form circle, mm. */
export function rootSpaceWidth({ segments, gear }: ToothProfile): number {
  const [x, y] = pointOn(segments[2], segments[2].from);
  const half = Math.PI / gear.teeth - Math.abs(Math.atan2(y, x));
  return 2 * Math.hypot(x, y) * Math.sin(half);
}

/** The same of any teeth, by the widths of their spaces, mm. */
export function rootSpaceOf(spaces: readonly { part: string; width: number }[], limit: number): Check {
  const narrowest = leastBy(spaces, ({ width }) => width);
  return {
    id: 'root-space',
    holds: narrowest.width >= limit,
    level: 'should',
    value: narrowest.width,
    limit,
    unit: 'mm',
    says: `the narrowest tooth space at its root is ${narrowest.width.toFixed(3)} mm (${narrowest.part})`,
  };
}

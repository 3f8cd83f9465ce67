import type { FittedTrain } from '../../fit/train/fitTrain.js';
import type { ToothProfile } from '../../tooth/profile.js';
import { pointOn } from '../../tooth/segments.js';
import type { Check } from '../check.js';
import { leastBy } from '../leastBy.js';

/**
 * Width of the tooth space next to its root, where the root rounding ends: a space narrower than an extruded line
 * fills up. Measured as the chord between the two roundings of a space at the form circle.
 */
export function rootSpace(train: FittedTrain): Check {
  const narrowest = leastBy(spacesOf(train), ({ width }) => width);
  const limit = train.spec.limits.toothFeature;
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

function spacesOf({ gears, bar }: FittedTrain): { part: string; width: number }[] {
  const spaces: { part: string; width: number }[] = gears.map(({ part, profile }) => ({
    part,
    width: rootSpaceWidth(profile),
  }));
  if (!bar) return spaces;
  const { normalPitch, round, normalPressureAngle } = bar.profile;
  const flankEnd = round.u - round.radius * Math.cos(normalPressureAngle);
  return [...spaces, { part: 'bar', width: normalPitch - 2 * flankEnd }];
}

/** Chord between the two roundings of a tooth space at the form circle, mm. */
function rootSpaceWidth({ segments, gear }: ToothProfile): number {
  const [x, y] = pointOn(segments[2], segments[2].from);
  const half = Math.PI / gear.teeth - Math.abs(Math.atan2(y, x));
  return 2 * Math.hypot(x, y) * Math.sin(half);
}

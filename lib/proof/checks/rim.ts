import { leftOf } from '../../features/grip.js';
import type { Train, TrainGear } from '../../fit/train/train.js';
import { ROUNDING } from '../../spec/nearest.js';
import type { Check } from '../check.js';

/**
 * Wall behind the teeth of a ring or a bar against the limit, mm; no record where neither is.
 * Source of the default limit: 1.2 × tooth depth, from which on AGMA 2001 takes a rim as solid (from memory; given
 * there for external gears).
 */
export function rim({ spec, gears, bar }: Train): Check[] {
  const limit = spec.limits.rim;
  const rings = gears.filter(({ gear }) => gear.internal);
  const walls = rings.map((ring) =>
    rimOf(`the ${ring.part}'s rim`, [ring.key, 'rim'], rimThickness(ring), limit),
  );
  return bar ? [...walls, rimOf("the bar's backing", ['bar', 'backing'], bar.backing, limit)] : walls;
}

/** Where scallops have taken their depth off, mm. */
export function rimThickness({ rim: wall, features }: TrainGear): number {
  return leftOf(wall, features);
}

function rimOf(what: string, [part, wall]: [string, string], value: number, limit: number): Check {
  const holds = value >= limit;
  const least = (Math.ceil(limit * 100 - ROUNDING) / 100).toFixed(2);
  return {
    id: 'rim',
    holds,
    level: 'should',
    value,
    limit,
    unit: 'mm',
    says: holds
      ? `${what} is ${value.toFixed(2)} mm`
      : `${part}.${wall} ${value}: a ${wall} thinner than ${least} mm may flex until a tooth skips; ${least} mm or more works`,
  };
}

/** The same where a script cut into the rim, mm as printed. */
export function rimLeft(value: number, limit: number): Check {
  const check = rimOf("what a cut left of the ring's rim", ['ring', 'rim'], value, limit);
  return check.holds
    ? check
    : {
        ...check,
        says: `a cut left ${value.toFixed(2)} mm of the ring's rim: a rim thinner than ${limit.toFixed(2)} mm may flex until a tooth skips`,
      };
}

import { ROUNDING } from '../../spec/nearest.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/**
 * Wall of the ring outside its root circle against the limit.
 * Source of the default limit: 1.2 × tooth depth, from which on AGMA 2001 takes a rim as solid (from memory; given
 * there for external gears).
 */
export function rim({ spec }: PlanFindings): Check {
  // Scallops take their depth off.
  const value = spec.ring.rim - (spec.ring.grip?.depth ?? 0);
  return rimOf("the ring's rim", 'ring.rim', value, spec.limits.rim);
}

/** The same of any wall behind teeth, mm. */
export function rimOf(what: string, parameter: string, value: number, limit: number): Check {
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
      : `${parameter} ${value}: a ${parameter.split('.')[1]} thinner than ${least} mm may flex until a tooth skips; ${least} mm or more works`,
  };
}

/** The same where a script cut into the rim, mm as printed. */
export function rimLeft(value: number, limit: number): Check {
  const check = rimOf("what a cut left of the ring's rim", 'ring.rim', value, limit);
  return check.holds
    ? check
    : {
        ...check,
        says: `a cut left ${value.toFixed(2)} mm of the ring's rim: a rim thinner than ${limit.toFixed(2)} mm may flex until a tooth skips`,
      };
}

import { ACROSS_LAYERS, pinStrength } from '../../fit/carrier/pinStrength.js';
import { skipOf } from '../../fit/skip.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { worksWith } from '../nearest/works.js';

/**
 * The torque on the sun at which a planet's pin breaks, in bending or shear, against the one that is asked; no record
 * where there are no pins. Strength across the layers: common practice, no source.
 */
export function pin(found: ToothFindings): Check[] {
  const { spec, set, inner } = found;
  const { carrier } = set;
  if (!carrier?.carrier.pin) return [];
  const workingRadius = (inner.centreDistance * spec.sun.teeth) / (spec.sun.teeth + spec.planets.teeth);
  const { strength, material } = spec.filament;
  const result = pinStrength(carrier, spec.faceWidth, {
    workingRadius,
    planets: spec.planets.count,
    strength,
  })!;
  const limit = spec.limits.sunTorque;
  const { breakingTorque, by, at } = result;
  const holds = breakingTorque >= limit;
  const skips = skipOf(found, spec.filament).sunTorque;
  const { diameter } = carrier.carrier.pin;
  const enough = Math.ceil(10 * diameter * Math.cbrt(limit / breakingTorque)) / 10;
  const ways = [
    !holds && worksWith(spec, { 'carrier.pin.diameter': enough }) && `carrier.pin.diameter ${enough}`,
    carrier.carrier.plates !== 'both' && 'plates on both sides',
  ].filter((way) => way !== false);
  return [
    {
      id: 'pin',
      holds,
      level: 'should',
      value: breakingTorque,
      limit,
      unit: 'N m',
      says:
        `a pin breaks in ${by} ${at.toFixed(1)} mm above the lower end of the gears at about ${breakingTorque.toFixed(2)} N m on the sun, ` +
        `at ${ACROSS_LAYERS} × ${strength} MPa across the layers of ${material}; a tooth skips at ${skips.toFixed(2)} N m` +
        (holds ? '' : `; ${limit} N m are asked: ${ways.join(' or ') || 'a larger module'}`),
    },
  ];
}

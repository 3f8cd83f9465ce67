import { type CarrierSet, type CarrierSizes, carrierSizes } from '../../fit/carrier/carrierSizes.js';
import { ACROSS_LAYERS, pinStrength } from '../../fit/carrier/pinStrength.js';
import { skipOf } from '../../fit/skip.js';
import { fittedSetOf } from '../../fit/train/setOf.js';
import { unlessRefused } from '../../refusal.js';
import type { Carrier, PlanetarySpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import type { Change } from '../nearest/changes.js';
import { sayWays } from '../nearest/words.js';
import { worksWith } from '../nearest/works.js';

/**
 * The torque on the sun at which a planet's pin breaks, in bending or shear, against the one that is asked; no record
 * where there are no pins. Strength across the layers: common practice, no source.
 */
export function pin({ asked }: ToothFindings<PlanetarySpec>): Check[] {
  const set = fittedSetOf(asked);
  const { spec, inner, radii, carrier } = set;
  if (!carrier?.carrier.pin) return [];
  const workingRadius = (inner.centreDistance * spec.sun.teeth) / (spec.sun.teeth + spec.planets.teeth);
  const { strength, material } = spec.filament;
  const load = { workingRadius, planets: spec.planets.count, strength };
  const limit = spec.limits.sunTorque;
  const { breakingTorque, by, at } = pinStrength(carrier, spec.faceWidth, load)!;
  const holds = breakingTorque >= limit;
  const skips = skipOf(set, spec.filament).sunTorque;
  const bears = (other: Carrier) => {
    const sizes = sizesOf({ ...spec, carrier: other }, set);
    return sizes !== null && pinStrength(sizes, spec.faceWidth, load)!.breakingTorque >= limit;
  };
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
        (holds ? '' : `; ${limit} N m are asked: ${offer(spec, carrier.carrier, radii.planet.root, bears)}`),
    },
  ];
}

/** Thicker pins, in tenths of a millimetre, and plates on both sides are tried before they are offered. */
function offer(
  spec: PlanetarySpec,
  carrier: Carrier,
  rootRadius: number,
  bears: (other: Carrier) => boolean,
): string {
  const pin = carrier.pin!;
  const first = Math.floor(10 * pin.diameter) + 1;
  const wider = Array.from(
    { length: Math.max(0, Math.ceil(20 * rootRadius) - first) },
    (_, i) => (first + i) / 10,
  );
  const diameter = wider.find((one) => bears({ ...carrier, pin: { ...pin, diameter: one } }));
  const thicker: Change = { 'carrier.pin.diameter': diameter };
  const ways: Change[] = [];
  if (diameter !== undefined && worksWith(spec, thicker)) ways.push(thicker);
  if (carrier.plates !== 'both' && bears({ ...carrier, plates: 'both' }))
    ways.push({ 'carrier.plates': 'both' });
  return ways.length
    ? `${sayWays(ways, ' or ')} would bear them`
    : 'no pin that the planets have room for bears them';
}

function sizesOf(spec: PlanetarySpec, set: CarrierSet): CarrierSizes | null {
  return unlessRefused(() => carrierSizes(spec, set), null);
}

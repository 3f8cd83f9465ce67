import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { idealPin, overPins, pinContactRadius, practicalPin } from '../../lib/tooth/overPins.js';
import { distanceToFlank, nearestOnFlank } from './flanks.js';
import { gear, ring } from './gears.js';

const samples: [string, Gear][] = [
  ['spur', gear(20)],
  ['spur odd, shifted', gear(17, { module: 2, profileShift: 0.2 })],
  ['spur, 25°', gear(31, { pressureAngle: 25 })],
  ['helical', gear(24, { module: 1.5, helixAngle: 30 })],
  ['helical odd, shifted', gear(15, { module: 1.5, helixAngle: 30, profileShift: 0.3 })],
  ['ring', ring(40)],
  ['ring odd', ring(45, { module: 1.5 })],
  ['helical ring', ring(45, { module: 1.5, helixAngle: 30 })],
];

/** Radius of the pin's centre, from the size over or between two of them. */
function centreRadius(measured: Gear, pin: number, size: number): number {
  const across = measured.teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * measured.teeth));
  return (size + (measured.internal ? pin : -pin)) / 2 / across;
}

describe('over and between pins', () => {
  it.each(samples)('%s: the pin touches the flank, and no more', (_, measured) => {
    const pin = practicalPin(measured);
    const centre = centreRadius(measured, pin, overPins(measured, pin));
    const zRange = measured.helixAngle ? measured.module : 0;
    const nearest = nearestOnFlank(measured, [centre, 0, 0], zRange);
    expect(nearest.distance).toBeCloseTo(pin / 2, 6);
    expect(pinContactRadius(measured, pin)).toBeCloseTo(nearest.radius, 3);
  });

  it.each(samples)('%s: with a relief the pin comes closer to the nominal flank by it', (_, measured) => {
    const pin = practicalPin(measured);
    const relief = 0.05;
    const centre = centreRadius(measured, pin, overPins(measured, pin, relief));
    const zRange = measured.helixAngle ? measured.module : 0;
    expect(distanceToFlank(measured, [centre, 0, 0], zRange)).toBeCloseTo(pin / 2 - relief, 6);
  });

  it.each(samples)('%s: the ideal pin touches on the circle d + 2 x m', (_, measured) => {
    const shifted = gearSizes(measured).referenceRadius + measured.profileShift * measured.module;
    const contact = pinContactRadius(measured, idealPin(measured));
    // Exact for spur gears; the equivalent spur gear of a helical one is a handbook approximation.
    expect(Math.abs(contact - shifted)).toBeLessThan(measured.helixAngle ? 0.05 * measured.module : 1e-9);
  });

  it('refuses pins that fall through or do not go in, naming one that works', () => {
    expect(() => overPins(gear(20), 0.9)).toThrow(Refusal);
    try {
      overPins(ring(40), 3);
      expect.unreachable();
    } catch (error) {
      const refusal = error as Refusal;
      expect(refusal.parameter).toBe('pin');
      expect(() => overPins(ring(40), refusal.nearest[0] as number)).not.toThrow();
    }
  });
});

describe('practical pin', () => {
  it.each(samples)('%s: a tenth of a millimetre, standing out beyond the tips', (_, measured) => {
    const pin = practicalPin(measured);
    expect(Number.isInteger(Math.round(pin * 1e9) / 1e8)).toBe(true);
    const size = overPins(measured, pin);
    const { tipRadius } = gearSizes(measured);
    const contact = pinContactRadius(measured, pin);
    if (measured.internal) {
      expect(size).toBeLessThan(2 * tipRadius);
      expect(contact).toBeGreaterThan(tipRadius);
    } else {
      expect(size).toBeGreaterThan(2 * tipRadius * Math.cos(Math.PI / (2 * measured.teeth)));
      expect(contact).toBeLessThan(tipRadius);
    }
    expect(Math.abs(pin - idealPin(measured))).toBeLessThan(0.25 * measured.module);
  });

  it('moves away from the ideal pin where the limits ask for it', () => {
    const usual = practicalPin(gear(20, { module: 3 }));
    expect(usual).toBe(5.2);
    const high = practicalPin(gear(20, { module: 3 }), { formRadius: 31, tipRadius: 33 });
    expect(high).toBeGreaterThan(usual);
    expect(pinContactRadius(gear(20, { module: 3 }), high)).toBeGreaterThanOrEqual(31);
  });

  // A ring's limits by default: tips from its base circle out, and flanks for the working depth of the rack.
  const allowed = ({ module, rack, internal, ...rest }: Gear) => {
    const { tipRadius, rootRadius, baseRadius } = gearSizes({ module, rack, internal, ...rest });
    return internal
      ? {
          tipRadius: Math.max(tipRadius, baseRadius),
          formRadius: rootRadius - (rack.dedendum - rack.addendum) * module,
        }
      : { tipRadius, formRadius: baseRadius };
  };

  const crowded: [string, Gear, { formRadius: number; tipRadius: number }][] = [
    ...samples.map(([name, measured]): (typeof crowded)[0] => [name, measured, allowed(measured)]),
    ...[0.1, 0.25, 0.45, 0.6, 0.7].flatMap((share): typeof crowded => {
      const limits = (measured: Gear) => {
        const { formRadius, tipRadius } = allowed(measured);
        return { tipRadius, formRadius: formRadius + share * (tipRadius - formRadius) };
      };
      const [outer, inner] = [gear(23, { module: 2.3, profileShift: 0.1 }), ring(52, { module: 1.7 })];
      return [
        [`flanks that end higher by ${share} of them`, outer, limits(outer)],
        [`the same of a ring`, inner, limits(inner)],
      ];
    }),
  ];
  it.each(crowded)('is the tenth nearest to the ideal that fits: %s', (_, measured, limits) => {
    const ideal = idealPin(measured);
    const chosen = practicalPin(measured, limits);
    const fits = (pin: number) => {
      try {
        const centre = centreRadius(measured, pin, overPins(measured, pin));
        const contact = pinContactRadius(measured, pin);
        return measured.internal
          ? contact <= limits.formRadius && contact >= limits.tipRadius && centre - pin / 2 < limits.tipRadius
          : contact >= limits.formRadius &&
              contact <= limits.tipRadius &&
              centre + pin / 2 > limits.tipRadius;
      } catch {
        return false;
      }
    };
    expect(fits(chosen)).toBe(true);
    for (let tenths = 1; tenths < 20 * ideal; tenths++) {
      const nearer = Math.abs(tenths / 10 - ideal) < Math.abs(chosen - ideal) - 1e-9;
      if (nearer)
        expect(fits(tenths / 10), `${tenths / 10} is nearer to ${ideal} than ${chosen}`).toBe(false);
    }
  });

  it('never takes a pin so thin that it would touch the involute beyond the base circle', () => {
    // A pin of 1.2 mm all but falls through between teeth of about this module: it lies deeper than its own radius along
    // the normal. Next to it only 1.3 mm would do, which touches far higher up.
    for (let module = 1.0015; module < 1.0032; module += 0.0001) {
      const measured = gear(20, { module });
      const { baseRadius } = gearSizes(measured);
      const limits = { formRadius: baseRadius + 1e-6, tipRadius: baseRadius + 0.03 };
      let pin: number;
      try {
        pin = practicalPin(measured, limits);
      } catch {
        continue;
      }
      const centre = centreRadius(measured, pin, overPins(measured, pin));
      expect(Math.sqrt(centre ** 2 - baseRadius ** 2), `${module}, ${pin}`).toBeGreaterThan(pin / 2);
    }
  });

  it('refuses teeth too small for any, and flanks too short for a tenth of a millimetre', () => {
    expect(() => practicalPin(gear(20, { module: 0.02 }))).toThrow(Refusal);
    for (const measured of [gear(20), ring(40)]) {
      const { baseRadius } = gearSizes(measured);
      const narrow = { formRadius: baseRadius + 0.5, tipRadius: baseRadius + 0.5001 };
      expect(() => practicalPin(measured, narrow)).toThrow(/^module: 1: no pin in steps of 0.1 mm/);
    }
  });

  it('does not say where a pin touches that falls through, or is too thick to go in', () => {
    expect(() => pinContactRadius(gear(20), 0.9)).toThrow(/^pin: 0.9: /);
    expect(() => pinContactRadius(ring(40), 3)).toThrow(/^pin: 3: /);
  });
});

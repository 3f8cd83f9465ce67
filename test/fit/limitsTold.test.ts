import { describe, expect, it } from 'vitest';
import { armRadius } from '../../lib/features/crank.js';
import { stationsLike } from '../../lib/fit/coupon/stations.js';
import { handleSeat } from '../../lib/fit/handleSeat.js';
import { ringSection } from '../../lib/fit/ring/section.js';
import { Refusal } from '../../lib/refusal.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { fitSet, fitted } from '../planetarySets.js';
import { refusalOf } from '../refusalOf.js';
import { setOf } from '../sets.js';

describe('lips with a reach of their own', () => {
  const lipped = (reach?: number) => {
    const spec = setOf(15, 15, 45, 4, {
      ...{ module: 2, faceWidth: 20, helix: { form: 'spur' }, retention: 'lips' },
      ...(reach === undefined ? {} : { lips: { on: 'ring', reach } }),
    });
    return fitSet(spec).ends.ring.bevelSize;
  };

  it('begin so much farther out as they reach less, within the room that a refusal tells', () => {
    const { rule, parameter } = refusalOf(() => lipped(9));
    expect(parameter).toBe('lips.reach');
    const [low, high] = rule
      .match(/from ([\d.]+) to ([\d.]+) mm/)!
      .slice(1)
      .map(Number);
    expect(high).toBeGreaterThan(low + 0.01);
    expect(lipped(low) - lipped(high)).toBeCloseTo(high - low, 9);
    expect(lipped((low + high) / 2) - lipped(high)).toBeCloseTo((high - low) / 2, 9);
    expect(refusalOf(() => lipped(high + 0.002)).nearest).toEqual([high]);
    expect(refusalOf(() => lipped(low - 0.002)).nearest).toEqual([low]);
  });
});

describe('what a handle turns over', () => {
  const seat = (crank: object, more: object = {}) => {
    const spec: PlanetarySpec = setOf(16, 14, 44, 4, {
      ...{ module: 2, faceWidth: 12 },
      sun: { teeth: 16, crank: { acrossFlats: 8, depth: 6, ...crank } },
      ...more,
    });
    return { spec, set: fitSet(spec), handle: handleSeat(fitted(spec))! };
  };

  it('is nothing but the gap where it reaches nothing higher', () => {
    const { handle, spec } = seat({ handle: 50 });
    expect(handle.standOff).toBeGreaterThanOrEqual(Math.max(spec.fit.gap, 2 * spec.printer.layer) - 1e-9);
    expect(handle.standOff).toBeLessThan(Math.max(spec.fit.gap, 2 * spec.printer.layer) + spec.printer.layer);
  });

  it('is a carrier’s upper plate, once the arm is longer than the plate’s opening is wide', () => {
    const carrier = { form: 'cage', plates: 'both', centre: 'open' };
    const { handle, spec, set } = seat({ handle: 50 }, { carrier });
    const plate = set.carrier!.plates.find(({ side }) => side === 'above')!;
    const over = plate.to - spec.faceWidth + Math.max(spec.fit.gap, 2 * spec.printer.layer);
    expect(handle.standOff).toBeGreaterThanOrEqual(over - 1e-9);
    expect(handle.standOff).toBeLessThan(over + spec.printer.layer);
    expect(50 + armRadius(spec.sun.crank!)).toBeGreaterThan(plate.inner);
  });

  it('is a clamp ring on the panel, once the arm reaches beyond the gap around the body', () => {
    const mounted = (handle: number) => {
      const spec: PlanetarySpec = setOf(15, 15, 45, 3, {
        ...{ faceWidth: 10, sun: { teeth: 15, crank: { acrossFlats: 8, depth: 6, handle } } },
        ring: { teeth: 45, rim: 6, mount: { hole: 98, panel: 12 } },
      });
      const set = fitSet(spec);
      return {
        spec,
        set,
        over: handleSeat(fitted(spec))!.standOff - Math.max(spec.fit.gap, 2 * spec.printer.layer),
      };
    };
    const { spec, set } = mounted(30);
    const { mount, flange, rim } = spec.ring;
    const inner = set.profiles.ring.rootRadius + rim + mount!.clearance;
    const height = flange!.thickness + mount!.panel + mount!.clamp - spec.faceWidth;
    const arm = armRadius(spec.sun.crank!);
    const { layer } = spec.printer;
    for (const handle of [inner - arm + 0.05, inner - arm + 20]) {
      expect(mounted(handle).over).toBeGreaterThanOrEqual(height - 1e-9);
      expect(mounted(handle).over).toBeLessThan(height + layer);
    }
    expect(mounted(inner - arm - 0.05).over).toBeLessThan(layer);
  });
});

describe('a wall of a ring as thick as it is far from the axis', () => {
  it('has its neutral fibre where a rectangle has it: R − h / ln(outer / inner)', () => {
    for (const share of [0.02, 0.3, 0.58, 0.61, 0.9, 1.4, 1.8, 1.96]) {
      const [meanRadius, depth] = [40, 40 * share];
      const { eccentricity } = ringSection({ meanRadius, depth, width: 10, modulus: 2000 });
      const exact = meanRadius - depth / Math.log((meanRadius + depth / 2) / (meanRadius - depth / 2));
      expect(eccentricity / exact, String(share)).toBeCloseTo(1, share < 0.1 ? 6 : 9);
    }
  });
});

describe('bolts on a plate', () => {
  it('stand within the circles that their refusal tells, to a thousandth', () => {
    const bolted = (circle: number) =>
      fitSet(
        setOf(15, 15, 45, 3, {
          carrier: { plates: 'both', form: 'cage', bolts: { diameter: 3.4, count: 3, circle } },
        }),
      );
    const { rule, parameter } = refusalOf(() => bolted(120));
    expect(parameter).toBe('carrier.bolts.circle');
    const [low, high] = rule
      .match(/from ([\d.]+) to ([\d.]+) mm/)!
      .slice(1)
      .map(Number);
    expect(high).toBeGreaterThan(low);
    for (const [circle, nearest] of [
      [low - 0.002, low],
      [high + 0.002, high],
    ])
      expect(refusalOf(() => bolted(circle))).toMatchObject({ parameter, nearest: [nearest] });
    const others = [low, high].map((circle) => {
      try {
        bolted(circle);
        return null;
      } catch (error) {
        if (error instanceof Refusal) return error.parameter;
        throw error;
      }
    });
    // On the circle itself only how many there are may still be wrong.
    for (const one of others) expect([null, 'carrier.bolts.count', 'carrier.bolts']).toContain(one);
  });
});

describe('a coupon', () => {
  it('tells of narrower faces where they are narrower than the file’s, and only there', () => {
    const told = (faceWidth: number) =>
      stationsLike(setOf(15, 15, 45, 5, { faceWidth }), [0.2, 0.3]).adjustments.filter((says) =>
        says.startsWith('faces '),
      );
    expect(told(20)).toHaveLength(1);
    const [, made] = /^faces ([\d.]+) mm wide in place of 20 mm: quicker to print$/.exec(told(20)[0])!;
    expect(Number(made)).toBeLessThan(20);
    expect(told(Number(made))).toEqual([]);
  });
});

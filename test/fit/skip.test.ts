import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planetPlay } from '../../lib/fit/planetPlay.js';
import { ringSection } from '../../lib/fit/ring/section.js';
import { squeezedRing } from '../../lib/fit/ring/twoLoads.js';
import { skipOf } from '../../lib/fit/skip.js';
import { bears, skipAdvice, usualSkipLimits } from '../../lib/fit/skipAdvice.js';
import { skip } from '../../lib/proof/checks/skip.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { gearOutline } from '../../lib/tooth/outline.js';
import { evenly } from '../evenly.js';
import { fitSet, planOf, setNumbers } from '../planetarySets.js';
import { referenceSet, setOf } from '../sets.js';

const spur = (more: object = {}) => setOf(15, 15, 45, 3, { helix: { form: 'spur' }, ...more });
const skipFor = (spec: PlanetarySpec, material = {}) => skipOf(setNumbers(spec), material);

describe('what is left of the engagement', () => {
  it('by hand: 15/15/45 spur, module 1.5, 20°, gap 0.1: play 0.1 / sin 20° toward the sun', () => {
    const { towardSun, towardRing } = planetPlay(setNumbers(spur({ fit: { gap: 0.1 } })));
    expect(towardSun).toBeCloseTo(0.29238, 5);
    expect(towardRing).toBeCloseTo(0.29238, 5);
  });

  it('a wide gap is stopped by the bottom clearance, 0.25 modules by ISO 53', () => {
    expect(planetPlay(setNumbers(spur({ fit: { gap: 0.2 } }))).towardSun).toBeCloseTo(0.375, 9);
  });

  it.each([spur(), referenceSet()])('working depth is the overlap of the outlines as drawn', (spec) => {
    const { profiles, centreDistance } = fitSet(spec);
    const outline = (part: 'planet' | 'ring') => gearOutline(profiles[part], spec.tolerance).points;
    const far = (outline: Float64Array, pick: (...r: number[]) => number) => {
      let found = Math.hypot(outline[0], outline[1]);
      for (let i = 0; i < outline.length; i += 2) found = pick(found, Math.hypot(outline[i], outline[i + 1]));
      return found;
    };
    const overlap = centreDistance + far(outline('planet'), Math.max) - far(outline('ring'), Math.min);
    expect(skipFor(spec).workingDepth).toBeCloseTo(overlap, 6);
  });
});

describe('forces', () => {
  it('the pinch moves the rim out by the engagement left, midway between the two forces', () => {
    const spec = referenceSet();
    const { pinchForce, engagementLeft, bindingForce, planetPlay: inward } = skipFor(spec, { modulus: 3500 });
    const root = setNumbers(spec).radii.ring.root;
    const section = ringSection({ meanRadius: root + 2.5, depth: 5, width: 20, modulus: 3500 });
    expect(squeezedRing(section, pinchForce).otherDiameter / 2).toBeCloseTo(engagementLeft, 9);
    const { towardRing } = planetPlay(setNumbers(spec));
    expect(squeezedRing(section, bindingForce).loadedDiameter / 2).toBeCloseTo(inward + towardRing, 9);
  });

  it('the torque, by hand: tangential force on the working circles, its radial part, N equal loads', () => {
    // Thin-ring coefficient for three loads 0.015939 W R³/(E I) (Roark case 7), for a rim thin enough for it.
    const spec = spur({ ring: { teeth: 45, rim: 1 } });
    const { sunTorque, engagementLeft } = skipFor(spec, { modulus: 3500 });
    const { radii } = setNumbers(spec);
    const R = radii.ring.root + spec.ring.rim / 2;
    const I = (20 * spec.ring.rim ** 3) / 12;
    const radial = engagementLeft / ((0.015939 * R ** 3) / (3500 * I));
    const tangential = radial / Math.tan((20 * Math.PI) / 180);
    const torque = (3 * tangential * 11.25) / 1000;
    expect(Math.abs(sunTorque / torque - 1)).toBeLessThan(0.005);
  });

  const anySpec = fc
    .record({
      teeth: fc.constantFrom<number[]>([15, 15, 45, 5], [12, 24, 60, 3], [20, 10, 40, 4], [30, 18, 66, 6]),
      gap: evenly(0.05, 0.5),
      rim: evenly(1, 10),
      form: fc.constantFrom('spur', 'herringbone'),
    })
    .map(({ teeth: [sun, planet, ring, count], gap, rim, form }) =>
      setOf(sun, planet, ring, count, { fit: { gap }, ring: { teeth: ring, rim }, helix: { form } }),
    );

  it('more gap never raises them', () => {
    fc.assert(
      fc.property(anySpec, evenly(0.001, 0.3), (spec, more) => {
        const before = skipFor(spec);
        const after = skipFor({ ...spec, fit: { ...spec.fit, gap: spec.fit.gap + more } });
        expect(after.pinchForce).toBeLessThanOrEqual(before.pinchForce * (1 + 1e-12));
        expect(after.sunTorque).toBeLessThanOrEqual(before.sunTorque * (1 + 1e-12));
      }),
    );
  });

  it('a thicker rim never lowers them', () => {
    fc.assert(
      fc.property(anySpec, evenly(0.01, 5), (spec, more) => {
        const before = skipFor(spec);
        const after = skipFor({ ...spec, ring: { ...spec.ring, rim: spec.ring.rim + more } });
        expect(after.pinchForce).toBeGreaterThanOrEqual(before.pinchForce);
        expect(after.sunTorque).toBeGreaterThanOrEqual(before.sunTorque);
      }),
    );
  });
});

describe('advice', () => {
  const weak = referenceSet({ ring: { teeth: 45, rim: 2 } });
  const withRim = (rim: number) => ({ ...weak, ring: { ...weak.ring, rim } });
  const usual = (spec: PlanetarySpec) => bears(spec, {}, usualSkipLimits);

  it('is empty for a set that bears its limits', () => {
    expect(usual(referenceSet())).toBe(true);
    expect(skipAdvice(referenceSet())).toEqual({});
  });

  it('names the least rim that passes, to a tenth of a millimetre', () => {
    const { rim } = skipAdvice(weak);
    expect(usual(withRim(rim!))).toBe(true);
    expect(usual(withRim(rim! - 0.1))).toBe(false);
  });

  it('names the least face width and the largest gap that pass', () => {
    const near = withRim(skipAdvice(weak).rim! - 0.1);
    const { faceWidth } = skipAdvice(near);
    expect(usual({ ...near, faceWidth: faceWidth! })).toBe(true);
    expect(usual({ ...near, faceWidth: faceWidth! - 0.5 })).toBe(false);
    const bearing = skipFor({ ...near, fit: { ...near.fit, gap: 0.1 } }).pinchForce;
    const limits = { pinchForce: (bearing + skipFor(near).pinchForce) / 2, sunTorque: 0 };
    const { gap } = skipAdvice(near, {}, limits);
    expect(bears({ ...near, fit: { ...near.fit, gap: gap! } }, {}, limits)).toBe(true);
    expect(bears({ ...near, fit: { ...near.fit, gap: gap! + 0.01 } }, {}, limits)).toBe(false);
  });

  it('names the nearest standard module that passes, none of the nearer ones passing', () => {
    const limits = { pinchForce: 1.5 * skipFor(weak).pinchForce, sunTorque: 0 };
    const { module } = skipAdvice(weak, {}, limits);
    expect(module).toBe(1.125);
    expect(bears({ ...weak, module: 1.125 }, {}, limits)).toBe(true);
    for (const nearer of [1.25, 1.375, 1.75, 2])
      expect(bears({ ...weak, module: nearer }, {}, limits)).toBe(false);
  });

  it('is empty when nothing alone is enough', () => {
    expect(skipAdvice(weak, {}, { pinchForce: 1e6, sunTorque: 0 })).toEqual({});
    const { says } = skip(planOf({ ...weak, limits: { ...weak.limits, pinchForce: 1e6 } }));
    expect(says).toContain('would pass alone');
  });
});

describe('the check', () => {
  it('holds for the reference set, and fails with values that pass for a thin rim', () => {
    expect(skip(planOf(referenceSet()))).toMatchObject({
      holds: true,
      level: 'should',
      limit: 50,
      unit: 'N',
    });
    const weak = referenceSet({ ring: { teeth: 45, rim: 2 } });
    const failed = skip(planOf(weak));
    expect(failed.holds).toBe(false);
    expect(failed.says).toContain(`ring.rim ${skipAdvice(weak).rim} would pass`);
  });

  it('names every way that helps, and each of them passes alone', () => {
    const withRim = (rim: number) => referenceSet({ ring: { teeth: 45, rim } });
    const usual = (spec: PlanetarySpec) => bears(spec, {}, usualSkipLimits);
    const near = withRim(skipAdvice(withRim(2)).rim! - 0.1);
    const { says } = skip(planOf(near));
    expect(says).toMatch(/; 50 N and [\d.]+ N m are asked\. With everything else as it is, .* would pass$/);
    const named = [...says.matchAll(/(ring\.rim|faceWidth|fit\.gap|module) ([\d.]+)/g)].map(
      ([, key, value]) => [key, Number(value)] as const,
    );
    const advised = skipAdvice(near);
    expect(named.map(([, value]) => value)).toEqual(Object.values(advised));
    for (const [key, value] of named) {
      const changed = {
        'ring.rim': { ...near, ring: { ...near.ring, rim: value } },
        faceWidth: { ...near, faceWidth: value },
        'fit.gap': { ...near, fit: { ...near.fit, gap: value } },
        module: { ...near, module: value },
      }[key as 'ring.rim' | 'faceWidth' | 'fit.gap' | 'module'];
      expect(usual(changed), `${key} ${value}`).toBe(true);
    }
  });

  it('speaks of the torque when that alone is too little', () => {
    const plain = referenceSet();
    const spec = { ...plain, limits: { ...plain.limits, sunTorque: 1e4 } };
    const failed = skip(planOf(spec));
    expect(failed).toMatchObject({ holds: false, limit: 1e4, unit: 'N m' });
    expect(failed.value).toBeCloseTo(skipFor(spec, spec.filament).sunTorque, 9);
  });

  it('says when the rim breaks before a tooth skips', () => {
    const spec = referenceSet();
    const { pinchForce, pinchStress } = skipFor(spec, spec.filament);
    const of = (strength: number) => skip(planOf({ ...spec, filament: { ...spec.filament, strength } }));
    const half = of(pinchStress / 2);
    expect(half.says).toContain(`the rim breaks first, at about ${(pinchForce / 2).toFixed(0)} N`);
    expect(of(1e6).says).not.toContain('breaks first');
  });
});

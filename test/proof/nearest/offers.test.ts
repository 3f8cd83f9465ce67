import { describe, expect, it } from 'vitest';
import type { Check } from '../../../lib/proof/check.js';
import { proveSet } from '../../../lib/proof/proveSet.js';
import { Refusal } from '../../../lib/refusal.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import type { Spec } from '../../../lib/spec/types.js';
import { offersOf, withChanges } from '../../fuzz/offers.mjs';

const common = { module: 1.5, faceWidth: 4, helix: { form: 'spur' }, tolerance: 0.05 };
const broken = (file: object): Check[] =>
  proveSet(resolveSpec(file) as Spec).sheet.checks.filter(({ level, holds }) => level === 'must' && !holds);
const offered = (checks: readonly Check[]) => checks.flatMap(({ says }) => offersOf(says));
const low = { addendum: 0.5, dedendum: 0.8, fillet: 0.1 };
const small = { bed: { width: 60, depth: 60, height: 30 } };
const pair = { kind: 'pair', pinion: { teeth: 18 }, wheel: { teeth: 30 } };
const ringed = { kind: 'pair', pinion: { teeth: 15 }, wheel: { internal: true, teeth: 18 } };
const rack = { kind: 'rack', pinion: { teeth: 18 }, bar: { teeth: 4 } };
const allOfPinion = { gap: 0.9, gapShare: 1 };

describe('a must that fails offers changes that work', () => {
  it.each([
    ['contact-ratio', { ...pair, rack: low }],
    ['trochoid-interference', ringed],
    ['tip-thickness', { ...pair, fit: allOfPinion }],
    ['contact-ratio', { ...rack, rack: low }],
    ['tip-thickness', { ...rack, fit: { gap: 0.9, gapShare: 0 } }],
    ['tip-thickness', { kind: 'gear', gear: { teeth: 9, profileShift: 0.6 }, fit: allOfPinion }],
    ['bed', { ...pair, printer: small }],
    [
      'tip-thickness',
      { ...rack, module: undefined, transverseModule: 1.5, fit: allOfPinion, helix: { form: 'helical' } },
    ],
    ['bed', { ...rack, bar: { length: 100, backing: 40 }, printer: small }],
    ['bed', { kind: 'gear', gear: { internal: true, teeth: 30, rim: 20 }, printer: small }],
    [
      'bed',
      { kind: 'gear', gear: { teeth: 20, crank: { acrossFlats: 6, depth: 2, handle: 80 } }, printer: small },
    ],
    ['bed', { kind: 'gear', faceWidth: 60, gear: { teeth: 60 }, printer: small }],
    // A ring that would follow from the others, but is given.
    [
      'neighbours',
      {
        kind: 'planetary',
        module: 0.62,
        faceWidth: 1.9,
        pressureAngle: 24.7,
        rack: 'C',
        fit: { gap: 0.34 },
        profileShift: 'solve',
        sun: { teeth: 11 },
        planets: { teeth: 19, count: 6 },
        ring: { teeth: 49 },
      },
    ],
  ])('%s of %o', (id, more) => {
    const file = { ...common, ...more };
    const failing = broken(file);
    expect(failing.map((check) => check.id)).toContain(id);
    const offers = offered(failing);
    expect(offers.length).toBeGreaterThan(0);
    for (const offer of offers)
      expect(
        broken(withChanges(file, offer)).map(({ says }) => says),
        JSON.stringify(offer),
      ).toEqual([]);
  });

  it('a coarse mesh of a small gap keeps it, since its concave sides stand back', () => {
    const file = {
      ...common,
      ...{ kind: 'rack', module: 1.17, rack: 'A', helix: { form: 'herringbone', angle: 3.5, hand: 'left' } },
      ...{ faceWidth: 2.4, fit: { gap: 0.09 }, tolerance: 0.03, pinion: { teeth: 12 }, bar: {} },
    };
    expect(broken(file)).toEqual([]);
  });

  it('an offer of few teeth under a steep helix is drawn within the tolerance', () => {
    const file = {
      ...common,
      ...{ kind: 'pair', module: 0.56, pressureAngle: 27.5, faceWidth: 6, fit: { gap: 0.05 } },
      ...{ helix: { form: 'helical', angle: 36.318 }, tolerance: 0.02, profileShift: 'solve' },
      ...{ pinion: { teeth: 5 }, wheel: { internal: true, teeth: 16 } },
    };
    expect(broken(file)).toEqual([]);
  });

  // A tooth of the basic rack is π m / 2 thick on the datum line and 2 h tan α less at the height h of its tips; a
  // relief takes relief / cos α off on each side (ISO 53; DERIVED). All of the gap is the bar's here.
  it('a bar is pointed from the gap on that the basic rack has room for, and just that gap is offered', () => {
    const most = (module: number) => module * (Math.PI / 4 - Math.tan(Math.PI / 9)) * Math.cos(Math.PI / 9);
    const file = { ...common, ...rack, module: 1, pinion: { teeth: 40 }, fit: { gap: 0.5, gapShare: 0 } };
    const changes = Object.fromEntries(offered(broken(file)).map(([first]) => first));
    expect(changes['fit.gap']).toBeLessThan(most(1));
    expect(changes['fit.gap']).toBeGreaterThan(0.98 * most(1));
    const module = changes.module as number;
    expect(most(module)).toBeGreaterThan(0.5);
    expect(most(0.98 * module)).toBeLessThan(0.5);
  });
});

describe('teeth that cannot be drawn are refused with a value that works', () => {
  const refusalOf = (file: object): Refusal => {
    try {
      proveSet(resolveSpec(file) as Spec);
    } catch (error) {
      if (error instanceof Refusal) return error;
      throw error;
    }
    throw new Error('was made');
  };
  it.each([
    [
      'gear.teeth',
      {
        kind: 'gear',
        module: 2.35,
        rack: { addendum: 0.88, dedendum: 1.83, fillet: 0 },
        gear: { internal: true, teeth: 40 },
      },
    ],
    [
      'pinion.teeth',
      {
        kind: 'pair',
        profileShift: 'solve',
        pressureAngle: 17.6,
        pinion: { teeth: 5 },
        wheel: { teeth: 46 },
      },
    ],
    [
      'rack',
      {
        ...pair,
        profileShift: 'solve',
        module: 2.18,
        rack: { addendum: 0.93, dedendum: 1.83, fillet: 0 },
        pinion: { teeth: 11 },
        wheel: { internal: true, teeth: 35 },
      },
    ],
  ])('%s', (parameter, more) => {
    const file = { ...common, ...more };
    const refusal = refusalOf(file);
    expect(refusal.parameter).toBe(parameter);
    expect(refusal.nearest).toHaveLength(1);
    const offers = [[[parameter, refusal.nearest[0]] as [string, unknown]], ...offersOf(refusal.rule)];
    for (const offer of offers) expect(broken(withChanges(file, offer)), JSON.stringify(offer)).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { measureBodies } from '../../lib/proof/bodies.js';
import { bodyPairs } from '../../lib/proof/bodyPairs.js';
import type { Check } from '../../lib/proof/check.js';
import { bodyGap } from '../../lib/proof/checks/bodyGap.js';
import { rolling } from '../../lib/proof/checks/rolling.js';
import { inspectSet, proveSet } from '../../lib/proof/proveSet.js';
import { rollTrain } from '../../lib/proof/rolling/rollTrain.js';
import { toothedBodies } from '../../lib/proof/toothedBodies.js';
import { buildTrain } from '../../lib/solid/buildTrain.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { fitted } from '../planetarySets.js';
import { referenceSet, setOf } from '../sets.js';

function check(spec: PlanetarySpec, id: string): Check {
  const found = proveSet(spec).sheet.checks.find((one) => one.id === id);
  if (!found) throw new Error(`no check ${id}`);
  return found;
}

describe('the reference set', () => {
  const sheet = inspectSet(referenceSet());

  it('passes every check', () => {
    expect(sheet.checks.filter(({ holds, level }) => !holds && level !== 'note')).toEqual([]);
    expect(sheet.checks.map(({ id }) => id)).toEqual([
      'coaxial',
      'assembly',
      'neighbours',
      'undercut',
      'tip-thickness',
      'line-width',
      'rim',
      'thin-features',
      'layers',
      'skip',
      'opening',
      'finger-gaps',
      'root-space',
      'involute-interference',
      'trochoid-interference',
      'contact-ratio',
      'rolling',
      'body-gap',
      'watertight',
      'self-intersection',
      'helix-accuracy',
      'overhang',
      'first-layer',
      'bed',
      'small-parts',
      'free-to-turn',
      'captured',
      'tilt',
    ]);
  });

  it('has the ratios of Willis, 1 + 45/15 = 4 with the ring held', () => {
    expect(sheet.train.ratios.ringHeld).toBeCloseTo(4, 12);
    expect(sheet.train.ratios.carrierHeld).toBeCloseTo(-3, 12);
    expect(sheet.train.ratios.sunHeld).toBeCloseTo(4 / 3, 12);
  });

  it('reports backlash by ISO 21771: twice the gap, over cos α_wt cos β_b on the working circle', () => {
    // α_t 22.79588° and β_b 28.02432° at β 30°: published helical example, EMGT 6.10 (from memory, recomputed).
    const along = Math.cos((22.79588 * Math.PI) / 180) * Math.cos((28.02432 * Math.PI) / 180);
    for (const mesh of sheet.meshes) {
      expect(mesh.normalBacklash).toBe(0.5);
      expect(mesh.circumferentialBacklash).toBeCloseTo(0.5 / along, 6);
    }
  });
});

describe('each check can fail', () => {
  it.each([
    ['coaxial', setOf(15, 14, 45, 5), 'must'],
    ['assembly', setOf(15, 15, 45, 7), 'must'],
    ['neighbours', setOf(12, 24, 60, 6), 'must'],
    ['undercut', setOf(12, 24, 60, 3, { helix: { form: 'spur' } }), 'should'],
    [
      'tip-thickness',
      setOf(12, 24, 60, 3, { helix: { form: 'spur' }, module: 0.8, fit: { gap: 0.48 } }),
      'must',
    ],
    ['line-width', setOf(15, 15, 45, 5, { module: 0.5, fit: { gap: 0.1 } }), 'should'],
    ['rim', setOf(15, 15, 45, 5, { ring: { teeth: 45, rim: 1 } }), 'should'],
    ['root-space', setOf(15, 15, 45, 5, { limits: { toothFeature: 3 } }), 'should'],
    [
      'contact-ratio',
      setOf(12, 24, 60, 3, { helix: { form: 'spur' }, limits: { contactRatio: 1.7 } }),
      'should',
    ],
  ] as [string, PlanetarySpec, string][])('%s', (id, spec, level) => {
    expect(check(spec, id)).toMatchObject({ holds: false, level });
  });

  it('rolling and body-gap find a planet that is turned by half a tooth', () => {
    const spec = referenceSet();
    const train = fitted(spec);
    const gears = train.gears.map((gear) => {
      const [first, ...others] = gear.places;
      const turned = { ...first, rotation: first.rotation + Math.PI / 15 };
      return gear.part === 'planet' ? { ...gear, places: [turned, ...others] } : gear;
    });
    const drawn = { ...train, gears };
    const found = { spec, drawn, rolling: rollTrain(drawn) };
    expect(rolling(found)).toMatchObject({ holds: false, level: 'must', value: 0 });
    const parts = buildTrain(drawn);
    const bodies = measureBodies(parts, toothedBodies(drawn), bodyPairs(drawn), spec.fit.gap);
    expect(bodyGap({ spec, drawn, bodies })).toMatchObject({ holds: false, level: 'must' });
  });
});

describe('15 / 14 / 45 with five planets', () => {
  it('is refused by the rule it breaks, with sets that work', () => {
    const { sheet, parts } = proveSet(setOf(15, 14, 45, 5));
    expect(parts).toEqual([]);
    const coaxial = sheet.checks.find(({ id }) => id === 'coaxial');
    expect(coaxial?.says).toContain('sun + 2 × planets = 43');
    expect(coaxial?.says).toContain('15 / 15 / 45 × 5');
    expect(coaxial?.says).toContain('16 / 14 / 44 × 5');
  });
});

describe('teeth that come to a point', () => {
  it('are refused with a gap and a module that do leave a tip', () => {
    const asked = { helix: { form: 'spur' }, module: 0.8, fit: { gap: 0.5 } };
    const refused = check(setOf(12, 24, 60, 3, asked), 'tip-thickness');
    expect(refused).toMatchObject({ holds: false, level: 'must' });
    const [, gap, module] = /fit\.gap ([\d.]+) or module ([\d.]+)/.exec(refused.says)!.map(Number);
    expect(check(setOf(12, 24, 60, 3, { ...asked, fit: { gap } }), 'tip-thickness').level).toBe('should');
    expect(check(setOf(12, 24, 60, 3, { ...asked, module }), 'tip-thickness').level).toBe('should');
    expect(check(setOf(12, 24, 60, 3, { ...asked, fit: { gap: gap + 0.01 } }), 'tip-thickness').level).toBe(
      'must',
    );
  });
});

import { describe, expect, it } from 'vitest';
import { planChecks, toothChecks } from '../../lib/proof/checks.js';
import { planSets } from '../../lib/proof/planSets.js';
import { proveSet } from '../../lib/proof/proveSet.js';
import { readSpec } from '../../lib/spec/readSpec.js';
import { withTolerance } from '../../lib/spec/withTolerance.js';
import type { WantedSets } from '../../lib/train/planWanted.js';
import { planText } from '../../lib/write/planFile.js';
import { outlinesOf, setNumbers } from '../planetarySets.js';
import { planetary } from '../sets.js';

/** Wishes that lie far apart: coarse and fine, straight and steep, wide and narrow gaps. */
const wishes: [string, WantedSets][] = [
  ['as it comes', {}],
  ['fine teeth', { module: [0.5, 0.8], gap: 0.2, faceWidth: 8 }],
  ['spur', { helixAngle: 0, module: [1, 1.5, 2.5], gap: 0.3 }],
  ['helical, steep', { helixForm: 'helical', helixAngle: 40, module: 1.25, faceWidth: 12 }],
  ['a gap as wide as can be', { module: [0.6, 1], gap: 0.36, faceWidth: 5 }],
  ['another rack and angle', { rack: 'D', pressureAngle: 25, module: 2, helixAngle: 15, rim: 4 }],
  ['low angle', { pressureAngle: 14.5, module: 1.5, helixAngle: 25, planets: { least: 2, most: 12 } }],
  ['a large bed', { bed: 400, module: [4, 6], gap: 0.5, ringTeeth: { least: 10, most: 90 } }],
  ['shifts found', { shifts: 'solve', module: [1.5], planets: 5, ratio: { value: 4, tolerance: 0.4 } }],
  [
    'shifts found, spur',
    { shifts: 'solve', helixAngle: 0, module: [2], planets: 4, ratio: { value: 5, tolerance: 0.5 } },
  ],
  ['planets at uneven angles', { spacing: 'nearest', module: [1.5], planets: { least: 3, most: 6 } }],
  [
    'uneven, shifted, into a hole',
    { spacing: 'nearest', shifts: 'solve', module: [1.25], planets: 5, hole: 80, gap: 0.2 },
  ],
  ['undercut, shifted', { shifts: 'solve', helixAngle: 0, module: [2], ringTeeth: { least: 20, most: 48 } }],
  ['a nozzle', { nozzle: 0.6, module: [1.5, 2] }],
];

/** Up to `count` rows spread over all of them. */
function sample<T>(rows: readonly T[], count: number): T[] {
  const step = Math.max(1, Math.floor(rows.length / count));
  return rows.filter((_, i) => i % step === 0).slice(0, count);
}

const failing = (checks: readonly { level: string; holds: boolean; id: string; says: string }[]) =>
  checks.filter(({ level, holds }) => level === 'must' && !holds).map(({ id, says }) => `${id}: ${says}`);

describe('every row of a plan passes inspect', () => {
  // Rolling costs a hundred times as much as all other checks on numbers and outlines: it is left to the next test.
  it.each(wishes)('%s: numbers and outlines of hundreds of rows', (_, wish) => {
    const { rows, wanted } = planSets({ ...wish, limit: 4000 });
    expect(rows.length).toBeGreaterThan(30);
    for (const row of sample(rows, 200)) {
      const spec = planetary(readSpec(planText(row, wanted)));
      const found = outlinesOf(spec);
      const checks = [...planChecks(found), ...toothChecks(found)];
      expect(failing(checks), JSON.stringify(row)).toEqual([]);
      const { radii } = setNumbers(spec);
      // Shifts that are found are written down to nine places.
      expect(row.outerDiameter).toBeCloseTo(2 * (radii.ring.root + spec.ring.rim), 7);
      const { bed } = spec.printer;
      expect(row.outerDiameter).toBeLessThanOrEqual(Math.min(bed.width, bed.depth) + 1e-9);
    }
  });

  it.each(wishes)('%s: a few rows proved whole', { timeout: 300_000 }, (_, wish) => {
    // Few teeth and meshes as coarse as the teeth allow, so that whole proofs stay affordable.
    const small = { ...wish, ringTeeth: { least: 10, most: 48 }, limit: 2000 };
    const { rows, wanted } = planSets(small);
    for (const row of sample(rows, 2)) {
      const spec = withTolerance(readSpec(planText(row, wanted)), String(row.module / 50));
      const { sheet, parts } = proveSet(spec);
      expect(failing(sheet.checks), JSON.stringify(row)).toEqual([]);
      expect(parts.length).toBe(row.planets + 2);
    }
  });

  it('15/14/45 with five planets, which needs shifts, is found and proved', { timeout: 120_000 }, () => {
    const counts = { sunTeeth: 15, planetTeeth: 14, ringTeeth: 45, planets: 5, module: 1.5 };
    expect(planSets(counts).rows).toEqual([]);
    const { rows, wanted } = planSets({ ...counts, shifts: 'solve' });
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ ...counts, spacing: 'equal', ratios: { ringHeld: 4 } });
    const { sun, planet, ring } = rows[0].profileShifts;
    // One centre distance: inv α_w of both meshes, by ISO 21771, and a = (z_1 ± z_2) m_t cos α_t / (2 cos α_w).
    const angle = Math.atan(Math.tan(Math.PI / 9) / Math.cos(Math.PI / 6));
    const inv = (at: number) => Math.tan(at) - at;
    const distance = (teeth: number, shifts: number) => {
      const wanted = inv(angle) + (2 * Math.tan(Math.PI / 9) * shifts) / teeth;
      let [low, high] = [0, 1.2];
      for (let i = 0; i < 100; i++) {
        if (inv((low + high) / 2) < wanted) low = (low + high) / 2;
        else high = (low + high) / 2;
      }
      return (teeth * Math.cos(angle)) / Math.cos(low);
    };
    expect(distance(29, sun + planet)).toBeCloseTo(distance(31, ring - planet), 6);
    const { sheet } = proveSet(withTolerance(readSpec(planText(rows[0], wanted)), '0.03'));
    expect(failing(sheet.checks)).toEqual([]);
  });
});

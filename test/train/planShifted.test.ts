import { describe, expect, it } from 'vitest';
import { fitSet } from '../../lib/fit/fitSet.js';
import { setNumbers } from '../../lib/fit/setNumbers.js';
import { planChecks, toothChecks } from '../../lib/proof/checks.js';
import { planSets } from '../../lib/proof/planSets.js';
import { Refusal } from '../../lib/spec/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';

const name = (sun: number, planet: number, ring: number, count: number) =>
  `${sun}/${planet}/${ring} × ${count}`;

/** Whether a file that asks for shifts to be found is made: no `must` on numbers or outlines fails. */
function isMade(sun: number, planet: number, ring: number, count: number, form: 'spur' | 'herringbone') {
  try {
    const spec = resolveSpec({
      kind: 'planetary',
      module: 1.5,
      helix: { form },
      faceWidth: 20,
      profileShift: 'solve',
      sun: { teeth: sun },
      planets: { teeth: planet, count },
      ring: { teeth: ring },
    });
    const made = fitSet(spec);
    const found = { ...setNumbers(spec), inner: made.inner, outer: made.outer, set: made };
    const gap = { least: spec.fit.gap, bySide: [0, 0] as [number, number], planet: 1, phase: 0 };
    const checks = [...planChecks(found), ...toothChecks({ ...found, rolling: { inner: gap, outer: gap } })];
    return checks.every(({ holds, level }) => holds || level !== 'must');
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

describe('sets with shifts that are found', () => {
  it.each(['spur', 'herringbone'] as const)('%s: all that a file can ask for, and no others', (form) => {
    const expected: string[] = [];
    for (let sun = 12; sun <= 16; sun++)
      for (let planet = 10; planet <= 15; planet++)
        for (let ring = sun + 2 * planet - 2; ring <= sun + 2 * planet + 2; ring++)
          for (let count = 3; count <= 6; count++)
            if (ring !== sun + 2 * planet && (sun + ring) % count === 0)
              if (isMade(sun, planet, ring, count, form)) expected.push(name(sun, planet, ring, count));
    const { rows } = planSets({
      shifts: 'solve',
      helixForm: form,
      module: 1.5,
      sunTeeth: { least: 12, most: 16 },
      planetTeeth: { least: 10, most: 15 },
      planets: { least: 3, most: 6 },
      engagement: 0,
      limit: 1000,
    });
    const shifted = rows.filter(
      ({ ringTeeth, sunTeeth, planetTeeth }) => ringTeeth !== sunTeeth + 2 * planetTeeth,
    );
    expect(expected.length).toBeGreaterThan(20);
    expect(
      shifted.map((row) => name(row.sunTeeth, row.planetTeeth, row.ringTeeth, row.planets)).sort(),
    ).toEqual(expected.sort());
    for (const { profileShifts } of shifted)
      expect(Math.max(...Object.values(profileShifts).map(Math.abs))).toBeGreaterThan(0.01);
  });

  it('leave the sets without shift as they are', () => {
    const wish = { module: 1.5, planets: 5, ringTeeth: { least: 40, most: 50 }, limit: 1000 };
    const plain = planSets(wish).rows;
    const both = planSets({ ...wish, shifts: 'solve' }).rows;
    expect(plain.length).toBeGreaterThan(1);
    expect(both.length).toBeGreaterThan(plain.length);
    expect(both).toEqual(expect.arrayContaining(plain));
  });

  it('are refused where there are too many to solve', () => {
    expect(() => planSets({ shifts: 'solve' })).toThrow(/^shifts: solve: would mean/);
    expect(() => planSets({ shifts: 'some' as 'solve' })).toThrow(/^shifts: some: must be none, solve/);
  });
});

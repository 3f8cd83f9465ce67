import { describe, expect, it } from 'vitest';
import { planChecks, toothChecks } from '../../lib/proof/checks.js';
import { planSets } from '../../lib/proof/planSets.js';
import { Refusal } from '../../lib/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { outlinesOf } from '../planetarySets.js';

const name = (sun: number, planet: number, ring: number, count: number) =>
  `${sun}/${planet}/${ring} × ${count}`;

/** Whether a file that asks for shifts to be found is made: no `must` on numbers or outlines fails. */
function isMade(
  sun: number,
  planet: number,
  ring: number,
  count: number,
  form: 'spur' | 'herringbone',
  wide = 0.25,
) {
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
      fit: { gap: wide },
    });
    const found = outlinesOf(spec);
    const checks = [...planChecks(found), ...toothChecks(found)];
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

  it('are of another sort: refused', () => {
    expect(() => planSets({ shifts: 'some' as 'solve' })).toThrow(/^shifts: some: must be none or solve/);
  });

  it('take the place of plain teeth that are undercut or do not run, and of no others', () => {
    const wish = {
      module: 1.5,
      helixForm: 'spur' as const,
      sunTeeth: { least: 12, most: 24 },
      planetTeeth: { least: 14, most: 24 },
      planets: 3,
      limit: 1000,
    };
    const plain = planSets(wish).rows.map((row) => name(row.sunTeeth, row.planetTeeth, row.ringTeeth, 3));
    const exact = planSets({ ...wish, shifts: 'solve' }).rows.filter(
      (row) => row.ringTeeth === row.sunTeeth + 2 * row.planetTeeth && row.profileShifts.sun !== 0,
    );
    // z_min = 2 h / sin² α, h the straight depth of ISO 53 profile B: handbooks, from memory; a tooth for the gap.
    const depth = 1.25 - 0.3 * (1 - Math.sin(Math.PI / 9));
    const undercut = (teeth: number) => teeth < (2 * depth) / Math.sin(Math.PI / 9) ** 2 + 1;
    const whole = exact.filter((row) => !undercut(row.sunTeeth) && !undercut(row.planetTeeth));
    expect(exact.length).toBeGreaterThan(20);
    for (const row of whole)
      expect(plain).not.toContain(name(row.sunTeeth, row.planetTeeth, row.ringTeeth, 3));
    expect(plain.some((set) => set.startsWith('21/21/63'))).toBe(true);
  });

  it('that just miss say which rule, the nearest first', () => {
    const wish = { shifts: 'solve' as const, module: 1.5, planets: 5, gap: 0.3, limit: 300 };
    const { nearMisses } = planSets({
      ...wish,
      sunTeeth: { least: 6, most: 24 },
      planetTeeth: { least: 6, most: 15 },
      ratio: { value: 4, tolerance: 0.1 },
    });
    const shifted = nearMisses.filter((row) => row.ringTeeth !== row.sunTeeth + 2 * row.planetTeeth);
    const kind = ({ fails }: { fails: string }) => fails.slice(0, fails.indexOf(':'));
    const kinds = new Set(shifted.map(kind));
    expect([...kinds].sort()).toEqual(expect.arrayContaining(['assembly', 'ratio']));
    for (const row of shifted) {
      const turns = 1 + row.ringTeeth / row.sunTeeth;
      const even = (row.sunTeeth + row.ringTeeth) % 5 === 0;
      // One rule is missed, and only one.
      expect(even, row.fails).toBe(kind(row) !== 'assembly');
      expect(Math.abs(turns - 4) <= 0.1 + 1e-9, row.fails).toBe(kind(row) !== 'ratio');
    }
    // The nearest come first, however late their shifts are looked for.
    const few = planSets({
      ...wish,
      sunTeeth: { least: 6, most: 24 },
      planetTeeth: { least: 6, most: 15 },
      ratio: { value: 4, tolerance: 0.1 },
      limit: 12,
    });
    expect(few.nearMisses).toEqual(nearMisses.slice(0, 12));
  });

  it('within a diameter are those of no limit that are small enough: nothing is passed over unsolved that fits', () => {
    const wish = {
      shifts: 'solve' as const,
      module: [1, 2],
      sunTeeth: { least: 12, most: 22 },
      planetTeeth: { least: 12, most: 16 },
      planets: { least: 4, most: 6 },
      gap: 0.2,
      limit: 5000,
    };
    const all = planSets({ ...wish, bed: 2000 });
    const small = planSets({ ...wish, bed: 2000, outerDiameter: 88 });
    const unranked = ({ rows }: ReturnType<typeof planSets>) =>
      rows.map(({ merit, ...row }) => row).sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)));
    expect(unranked(small)).toEqual(
      unranked({ ...all, rows: all.rows.filter(({ outerDiameter }) => outerDiameter <= 88) }),
    );
    expect(small.rows.length).toBeGreaterThan(20);
    expect(all.rows.length - small.rows.length).toBeGreaterThan(20);
    // Those that are a tenth too large are still looked at, for the near misses.
    const near = small.nearMisses.filter(({ fails }) => fails.startsWith('outerDiameter: '));
    expect(near.length).toBe(
      all.rows.filter(({ outerDiameter }) => outerDiameter > 88 && outerDiameter <= 88 * 1.1).length,
    );
  });

  it('that cannot be found say which limit is in the way', () => {
    const wide = {
      shifts: 'solve' as const,
      module: 1.5,
      planets: { least: 3, most: 5 },
      gap: 0.6,
      limit: 1000,
    };
    const { nearMisses } = planSets({
      ...wide,
      sunTeeth: { least: 6, most: 14 },
      planetTeeth: { least: 6, most: 12 },
    });
    const refused = nearMisses.filter(({ fails }) => fails.startsWith('shifts: '));
    expect(refused.length).toBeGreaterThan(2);
    for (const { sunTeeth, planetTeeth, ringTeeth, planets, fails } of refused) {
      expect(fails).toMatch(/^shifts: a tooth tip would be thinner than 0\.2 of the module$/);
      expect(isMade(sunTeeth, planetTeeth, ringTeeth, planets, 'herringbone', 0.6)).toBe(false);
    }
  });
});

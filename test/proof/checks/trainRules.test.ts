import { describe, expect, it } from 'vitest';
import { assembly } from '../../../lib/proof/checks/assembly.js';
import { coaxial } from '../../../lib/proof/checks/coaxial.js';
import { neighbours } from '../../../lib/proof/checks/neighbours.js';
import { inspectSet } from '../../../lib/proof/proveSet.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { allowsEqualSpacing } from '../../../lib/train/assembly.js';
import { planOf } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const spur = { helix: { form: 'spur' } };
const checked = (check: typeof coaxial, spec: PlanetarySpec) => check(planOf(spec));

/** The sets that a refusal offers, as tooth counts and planets. */
const offered = (says: string) =>
  [...says.matchAll(/(\d+) \/ (\d+) \/ (\d+) × (\d+)/g)].map((match) => match.slice(1).map(Number));

describe('coaxial', () => {
  it('names shifts that would work, and they do', () => {
    const { holds, says } = checked(coaxial, setOf(15, 14, 45, 5, spur));
    expect(holds).toBe(false);
    const shifts = /shifts of (\S+) \(sun\), (\S+) \(planets\) and (\S+) \(ring\)/.exec(says)!;
    const [sun, planet] = shifts.slice(1).map(Number);
    const tried = checked(
      coaxial,
      setOf(15, 14, 45, 5, {
        ...spur,
        profileShift: 'solve',
        sun: { teeth: 15, profileShift: sun },
        planets: { teeth: 14, count: 5, profileShift: planet },
      }),
    );
    expect(tried.holds).toBe(true);
    expect(Number(/ring (\S+?);/.exec(tried.says)![1])).toBeCloseTo(Number(shifts[3]), 2);
  });

  it('says when shifts cannot help, and offers unshifted sets that are coaxial', () => {
    const { says } = checked(coaxial, setOf(15, 10, 45, 5, spur));
    expect(says).toContain('profileShift: solve cannot help');
    expect(offered(says).length).toBeGreaterThan(0);
    for (const [sun, planet, ring, count] of offered(says))
      expect(checked(coaxial, setOf(sun, planet, ring, count, spur)).holds).toBe(true);
  });

  it('says what was found, and offers sets that can be solved where nothing was', () => {
    const found = checked(coaxial, setOf(15, 14, 45, 5, { ...spur, profileShift: 'solve' }));
    expect(found.says).toMatch(/profile shifts found: sun 0\.\d+, planets 0\.\d+, ring -0\.\d+/);
    const none = checked(coaxial, setOf(15, 10, 45, 5, { ...spur, profileShift: 'solve' }));
    expect(none.holds).toBe(false);
    expect(none.says).toContain('solve finds no shifts');
    expect(offered(none.says).length).toBeGreaterThan(0);
    for (const [sun, planet, ring, count] of offered(none.says)) {
      const spec = setOf(sun, planet, ring, count, { ...spur, profileShift: 'solve' });
      expect(checked(coaxial, spec).holds).toBe(true);
    }
  });
});

describe('assembly', () => {
  it('offers nearest places where equal ones do not assemble', () => {
    const equal = checked(assembly, setOf(20, 30, 80, 3));
    expect(equal.holds).toBe(false);
    expect(equal.says).toContain('spacing: nearest');
    expect(equal.says).toContain('1.200° off');
    for (const [sun, , ring, count] of offered(equal.says))
      expect(allowsEqualSpacing(sun, ring, count)).toBe(true);
  });

  it('takes nearest places when asked, and the sheet says where and how unbalanced', () => {
    const spec = setOf(20, 30, 80, 3, {
      planets: { teeth: 30, count: 3, spacing: 'nearest' },
      faceWidth: 4,
      tolerance: 0.1,
    });
    const { train, checks, meshes } = inspectSet(spec);
    expect(checks.find(({ id }) => id === 'assembly')).toMatchObject({ holds: true, unit: 'deg' });
    expect(checks.filter(({ holds, level }) => !holds && level === 'must')).toEqual([]);
    expect(train.planets.map(({ angle }) => angle)).toEqual(
      [0, 118.8, 241.2].map((x) => expect.closeTo(x, 9)),
    );
    expect(train.unbalance).toBeCloseTo((1 + 2 * Math.cos((118.8 * Math.PI) / 180)) / 3, 12);
    // The widest opening lies between the two planets that stand 122.4° apart.
    const covered = (360 / Math.PI) * Math.asin((30 / 2 + Math.cos(Math.PI / 6)) / ((20 + 30) / 2));
    expect(train.opening.arc).toBeCloseTo(122.4 - covered, 6);
    for (const { gap } of meshes) expect(Math.abs(gap.bodies! - 0.25)).toBeLessThanOrEqual(0.1);
  });

  it('is met by equal places too when nearest ones are asked', () => {
    const spec = setOf(15, 15, 45, 5, { planets: { teeth: 15, count: 5, spacing: 'nearest' } });
    expect(checked(assembly, spec)).toMatchObject({ holds: true, value: expect.closeTo(0, 9) });
  });
});

describe('neighbours', () => {
  // 21/57: step 4.615°, four planets at 0, 92.308, 180 and 272.308: the tightest pair is 87.692° apart.
  it('measures the tightest pair at its own angle', () => {
    const spec = setOf(21, 18, 57, 4, { ...spur, planets: { teeth: 18, count: 4, spacing: 'nearest' } });
    const { value } = checked(neighbours, spec);
    const chord = 2 * 19.5 * 1.5 * Math.sin(((87.6923077 / 2) * Math.PI) / 180);
    expect(value).toBeCloseTo(chord - 20 * 1.5, 6);
  });
});

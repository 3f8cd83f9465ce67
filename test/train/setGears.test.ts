import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { centreDistance } from '../../lib/train/pair.js';
import { setGears } from '../../lib/train/setGears.js';
import { refusalOf } from '../refusalOf.js';
import { planetary, setOf } from '../sets.js';

const solved = (more: object = {}) =>
  setOf(15, 14, 45, 5, { profileShift: 'solve', helix: { form: 'spur' }, ...more });

const shiftsOf = (spec: PlanetarySpec) => {
  const { sun, planet, ring } = setGears(spec);
  return [sun, planet, ring].map(({ profileShift }) => profileShift);
};

describe('gears of a file that asks to solve', () => {
  it('stand at one centre distance, and the file stays as it was asked', () => {
    const spec = solved();
    const { sun, planet, ring } = setGears(spec);
    expect(centreDistance(sun, planet)).toBeCloseTo(centreDistance(planet, ring), 6);
    expect(spec.profileShift).toBe('solve');
    expect(spec.sun).not.toHaveProperty('profileShift');
  });

  it('are found again after the file is resolved again', () => {
    const spec = solved();
    expect(resolveSpec(spec)).toEqual(spec);
    expect(shiftsOf(planetary(resolveSpec(JSON.parse(JSON.stringify(spec)))))).toEqual(shiftsOf(spec));
  });

  it('keep the shifts that the file gives, all three as well where they agree', () => {
    const given = solved({ planets: { teeth: 14, count: 5, profileShift: 0.3 } });
    const [sun, planet, ring] = shiftsOf(given);
    expect(planet).toBe(0.3);
    const all = solved({
      sun: { teeth: 15, profileShift: sun },
      planets: { teeth: 14, count: 5, profileShift: planet },
      ring: { teeth: 45, profileShift: ring },
    });
    expect(shiftsOf(all)).toEqual([sun, planet, ring]);
  });

  it('refuse three that contradict each other, and the offer works', () => {
    const contradicting = (profileShift: number) =>
      solved({
        sun: { teeth: 15, profileShift: 0.28 },
        planets: { teeth: 14, count: 5, profileShift: 0.28 },
        ring: { teeth: 45, profileShift },
      });
    const { parameter, value, nearest } = refusalOf(() => setGears(contradicting(0.2)));
    expect([parameter, value]).toEqual(['ring.profileShift', 0.2]);
    expect(shiftsOf(contradicting(nearest[0] as number))).toEqual([0.28, 0.28, nearest[0]]);
  });

  it('are left standard where nothing can be found', () => {
    expect(shiftsOf(setOf(15, 10, 45, 5, { profileShift: 'solve' }))).toEqual([0, 0, 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { proveSet } from '../../../lib/proof/proveSet.js';
import { setOf } from '../../sets.js';

/** What holds a spur set, whose teeth hold nothing: proved by linear programs and made again on the meshes. */
const captured = (more: object) => {
  const spec = setOf(15, 15, 45, 3, { helix: { form: 'spur' }, faceWidth: 20, tolerance: 0.03, ...more });
  const { checks, play } = proveSet(spec).sheet;
  return { check: checks.find(({ id }) => id === 'captured')!, play: play! };
};

describe('a spur set', () => {
  it('is held by nothing of its own', () => {
    const { check, play } = captured({});
    expect(check).toMatchObject({ holds: false, value: null });
    expect(play.heldBy).toEqual([]);
  });

  it('is held by lips', () => {
    const { check, play } = captured({ retention: 'lips' });
    expect(check.holds, check.says).toBe(true);
    expect(play.heldBy).toContain('lips');
    expect(play.wayOut.every(({ blocked }) => blocked)).toBe(true);
    // Straight up a planet meets the lip no earlier than the gap allows: gap / cos 45° (plain geometry).
    expect(play.planet.axial.up).toBeGreaterThanOrEqual(0.32 * Math.SQRT2 - 1e-6);
  });

  it('is held by waisted pins between two plates, every part by its own', () => {
    const { check, play } = captured({ carrier: { plates: 'both', pin: { form: 'waisted' } } });
    expect(check.holds, check.says).toBe(true);
    expect(play.heldBy).toEqual(expect.arrayContaining(['pins', 'plates']));
    expect(play.wayOut.map(({ part, blocked }) => [part, blocked])).toEqual(
      ['planet-1', 'planet-1', 'sun', 'sun', 'carrier', 'carrier'].map((part) => [part, true]),
    );
    // 45° cones: gap √2, which is less than the two layers to a plate.
    expect(play.planet.axial.up).toBeCloseTo(0.25 * Math.SQRT2, 2);
    expect(play.sun.axial.up).toBeCloseTo(0.4, 6);
  });

  it('keeps its planets on waisted pins of one plate, yet is not held as a whole, and says which part is not', () => {
    const { check, play } = captured({ carrier: { plates: 'below', pin: { form: 'waisted' } } });
    expect(play.planet.axial.up).toBeCloseTo(0.25 * Math.SQRT2, 2);
    expect(check.holds).toBe(false);
    expect(check.says).toContain('the sun');
  });
});

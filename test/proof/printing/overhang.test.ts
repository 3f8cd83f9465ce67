import { describe, expect, it } from 'vitest';
import { overhang } from '../../../lib/proof/checks/overhang.js';
import { overhangOf } from '../../../lib/proof/printing/overhang.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { referenceSet, setOf } from '../../sets.js';

const limits = { angle: 45, above: 0.2, tolerance: 0.01 };
const checkOf = (spec: PlanetarySpec) => overhang({ spec, parts: buildSet(spec) });

/** Wall of a cone that widens upward from radius `low` at z = 0, as triangles between two circles. */
function cone(low: number, high: number, height: number, sides = 180, lift = 0): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < sides; i++) {
    const angle = (2 * Math.PI * i) / sides;
    positions.push(low * Math.cos(angle), low * Math.sin(angle), lift);
    positions.push(high * Math.cos(angle), high * Math.sin(angle), lift + height);
    const [a, b] = [2 * i, 2 * ((i + 1) % sides)];
    triangles.push(a, b, b + 1, a, b + 1, a + 1);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

describe('overhang of closed forms', () => {
  it('a cone at 45° passes at 45°, facets and all; a steeper limit does not let it', () => {
    const wall = cone(10, 14, 4);
    expect(overhangOf(wall, limits)).toMatchObject({ area: 0, steepest: expect.closeTo(45, 1) });
    expect(overhangOf(wall, { ...limits, angle: 40 }).area).toBeGreaterThan(300);
  });

  it('a cone at 60° counts with its whole area above the first layer', () => {
    const height = 4;
    const run = height * Math.tan(Math.PI / 3);
    const found = overhangOf(cone(10, 10 + run, height), limits);
    // Lateral area of a cone between radii r and R: π (R² − r²) / sin of its angle from the axis.
    const low = 10 + 0.2 * Math.tan(Math.PI / 3);
    const area = (Math.PI * ((10 + run) ** 2 - low ** 2)) / Math.sin(Math.PI / 3);
    expect(found.steepest).toBeCloseTo(60, 1);
    expect(Math.abs(found.area / area - 1)).toBeLessThan(0.001);
  });

  it('what lies within the first layer, faces up or stands upright does not count', () => {
    expect(overhangOf(cone(10, 40, 0.2), limits).area).toBe(0);
    expect(overhangOf(cone(14, 10, 4), limits)).toMatchObject({ area: 0, steepest: 0 });
    expect(overhangOf(cone(10, 10, 4), limits).area).toBe(0);
  });

  it('a ceiling counts whatever it is cut into', () => {
    // Between two circles at one height: a flat ring, area π (R² − r²), as slim triangles.
    const ring = overhangOf(cone(10, 10.5, 0, 3000, 5), limits);
    expect(ring.steepest).toBe(90);
    expect(Math.abs(ring.area / (Math.PI * (10.5 ** 2 - 10 ** 2)) - 1)).toBeLessThan(0.001);
    expect(ring.at[2]).toBe(5);
  });

  it('the mesh tolerance explains a little, never much', () => {
    const lean = (degrees: number) => cone(10, 10 + 0.2 * Math.tan((degrees * Math.PI) / 180), 0.2, 720, 1);
    expect(overhangOf(lean(47), limits).area).toBe(0);
    expect(overhangOf(lean(47), { ...limits, tolerance: 0 }).area).toBeGreaterThan(10);
    expect(overhangOf(lean(50), { ...limits, tolerance: 1 }).area).toBeGreaterThan(10);
  });
});

describe('overhang of sets', () => {
  it('flanks lean by the base helix angle all over: sin β_b = sin β cos α_n (ISO 21771)', () => {
    for (const angle of [15, 30, 45]) {
      const spec = referenceSet({ helix: { form: 'herringbone', angle }, bevel: { size: 0 } });
      const base = Math.asin(Math.sin((angle * Math.PI) / 180) * Math.cos(Math.PI / 9)) * (180 / Math.PI);
      const [sun] = buildSet(spec);
      const passing = overhangOf(sun.mesh, { ...limits, angle: base, above: 0 });
      const failing = overhangOf(sun.mesh, { ...limits, angle: base - 4.5, above: 0 });
      expect(passing.area).toBe(0);
      // Half of every flank faces down: at least the area of 30 flanks over 1.5 modules of their height.
      expect(failing.area).toBeGreaterThan(15 * 20 * 1.5 * 1.5);
      const { says } = checkOf(spec);
      expect(says).toContain(`flanks lean by ${base.toFixed(1)}°`);
    }
  });

  it('bevels at 45° pass, flatter ones fail and are told what would pass', () => {
    expect(checkOf(referenceSet())).toMatchObject({ holds: true, level: 'should', value: 0, limit: 10 });
    const failed = checkOf(referenceSet({ bevel: { angle: 35 } }));
    expect(failed).toMatchObject({ holds: false, unit: 'mm²' });
    expect(failed.says).toContain('bevel.angle 45 would pass');
    expect(checkOf(referenceSet({ bevel: { angle: 35 }, limits: { overhangAngle: 55 } })).holds).toBe(true);
    expect(checkOf(referenceSet({ bevel: { angle: 35 }, limits: { overhangArea: 1000 } })).holds).toBe(true);
  });

  it('no bevel at all is offered where none is steep enough', () => {
    const asked = { bevel: { angle: 50 }, limits: { overhangAngle: 20 }, helix: { form: 'spur' } };
    const failed = checkOf(referenceSet(asked));
    expect(failed.holds).toBe(false);
    expect(failed.says).toContain('bevel.size 0 would pass');
    expect(checkOf(referenceSet({ ...asked, bevel: { size: 0 } })).holds).toBe(true);
    const most = { ...asked, limits: { overhangAngle: 30 } };
    expect(checkOf(referenceSet(most)).says).toContain('bevel.angle 60 would pass');
    expect(checkOf(referenceSet({ ...most, bevel: { angle: 60 } })).holds).toBe(true);
  });

  it('flanks beyond the limit fail, and the helix angle offered passes', () => {
    const steep = (angle: number) =>
      setOf(15, 15, 45, 5, {
        helix: { form: 'helical', angle },
        bevel: { size: 0 },
        limits: { overhangAngle: 30 },
      });
    const failed = checkOf(steep(45));
    expect(failed.holds).toBe(false);
    // By hand: asin(sin 30° / cos 20°) = 32.15°.
    expect(failed.says).toContain('helix.angle 32 or less would pass');
    expect(checkOf(steep(32)).holds).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../lib/refusal.js';
import { adaptivePitch } from '../../../lib/solid/sweep/adaptivePitch.js';
import { fitted, sweptGears } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const spec = setOf(15, 15, 45, 5, { helix: { angle: 30 } });
const [sun] = sweptGears(fitted(spec));

describe('the search for the coarsest pitch', () => {
  it('ends with a refusal where the cones of both end faces cross, which no division comes near', () => {
    // Bevels of 2 mm at 45° on a face of 3 mm: the tips would end 1 mm above where they begin.
    const crossed = { ...sun.sweep, faceWidth: 3, bevelSize: 2, bevelAngle: Math.PI / 4 };
    for (const lips of [false, true]) {
      const make = () => adaptivePitch(sun.profile, { ...crossed, lips }, 0.01);
      expect(make).toThrow(Refusal);
      expect(make).toThrow(/^tolerance: 0.01: is not kept by these teeth with \d+ million triangles a gear$/);
    }
  });

  it('refuses a tolerance that would take more triangles than any gear may have, before they are made', () => {
    expect(() => adaptivePitch(sun.profile, sun.sweep, 1e-12)).toThrow(Refusal);
  });

  it('keeps a pitch that needs many triangles but comes within tolerance', () => {
    const { triangles } = adaptivePitch(sun.profile, sun.sweep, 0.0005);
    expect(triangles.length / 3).toBeGreaterThan(2000);
  });
});

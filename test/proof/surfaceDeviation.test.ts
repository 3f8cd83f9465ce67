import { describe, expect, it } from 'vitest';
import { surfaceDeviation } from '../../lib/proof/surfaceDeviation.js';
import { gearBody } from '../../lib/solid/gearBody.js';
import { fitted, sweptGears } from '../planetarySets.js';
import { setOf } from '../sets.js';

const spec = setOf(15, 15, 45, 5, { tolerance: 0.005 });
const [sun] = sweptGears(fitted(spec));
/** Concave sides stand back by up to three quarters of the tolerance. */
const near = 0.75 * spec.tolerance;
const body = gearBody(sun.profile, sun.sweep, sun.wall, spec.tolerance);

describe('distance from the exact surface', () => {
  it('stays within the tolerance on every toothed triangle, and uses what it is given', () => {
    const found = surfaceDeviation(body, sun.profile, sun.sweep, near);
    expect(found.astray).toBe(0);
    expect(found.measured).toBeGreaterThan(1000);
    expect(found.worst).toBeLessThanOrEqual(0.005);
    expect(found.worst).toBeGreaterThan(0.001);
  });

  it('finds one vertex that is moved by a hundredth of a millimetre', () => {
    const positions = body.positions.slice();
    positions[0] += 0.01;
    expect(surfaceDeviation({ ...body, positions }, sun.profile, sun.sweep, near).astray).toBeGreaterThan(0);
  });

  it('finds the waist of a straight loft', () => {
    // One straight step over the twist θ pinches the waist by r (1 − cos θ/2): common geometry of a chord.
    const coarse = gearBody(sun.profile, sun.sweep, sun.wall, 0.2);
    const found = surfaceDeviation(coarse, sun.profile, sun.sweep, 0.75 * 0.2);
    expect(found.worst).toBeGreaterThan(0.02);
    expect(found.worst).toBeLessThanOrEqual(0.2);
  });

  it('takes a gear of the wrong helix for what it is', () => {
    const wrong = { ...sun.sweep, hand: 'left' as const };
    expect(surfaceDeviation(body, sun.profile, wrong, near).astray).toBeGreaterThan(0);
  });
});

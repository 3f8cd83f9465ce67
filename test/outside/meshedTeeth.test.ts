import { describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import { setOf } from '../sets.js';

/**
 * Base tangent lengths read off the finished mesh: vertices on the flanks of the sun are unwound from the base
 * circle with the textbook parametric involute, here and not with the library's code.
 */
function spanOnMesh(
  positions: Float64Array,
  baseRadius: number,
  from: number,
  to: number,
  span: number,
): number {
  // Angle at which the involute through a point leaves the base circle, for either side of a tooth.
  const feet: { clockwise: number[]; counter: number[] } = { clockwise: [], counter: [] };
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = positions.subarray(i, i + 3);
    const radius = Math.hypot(x, y);
    if (z !== 0 || radius < from || radius > to) continue;
    const roll = Math.sqrt((radius / baseRadius) ** 2 - 1);
    const unwound = roll - Math.atan(roll);
    const angle = Math.atan2(y, x);
    // The tooth on +x: its counter-clockwise flank has positive angles.
    if (Math.abs(angle) < Math.PI / 15) {
      if (angle > 0) feet.counter.push(angle + unwound);
      else feet.clockwise.push(angle - unwound);
    }
  }
  expect(feet.counter.length).toBeGreaterThan(2);
  const mean = (values: number[]) => values.reduce((a, b) => a + b) / values.length;
  for (const list of Object.values(feet)) for (const foot of list) expect(foot).toBeCloseTo(mean(list), 9);
  // Over k teeth: the base pitch k − 1 times, and one tooth on the base circle.
  const baseTooth = mean(feet.counter) - mean(feet.clockwise);
  return baseRadius * (baseTooth + ((span - 1) * 2 * Math.PI) / 15);
}

describe('the finished sun of 15 teeth', () => {
  it('has the base tangent length of the handbook table, less twice its relief', () => {
    // Machinery's Handbook / EMGT base tangent table, module 1, 20°: z 15 over 2 teeth 4.6383 (from memory, recomputed).
    const spec = setOf(15, 15, 45, 5, {
      module: 1,
      helix: { form: 'spur' },
      fit: { gap: 0.1, gapShare: 0.5 },
      bevel: { size: 0 },
    });
    const sun = buildSet(spec)[0].mesh;
    const baseRadius = 7.5 * Math.cos((20 * Math.PI) / 180);
    // Between just above the undercut and just below the tip.
    const span = spanOnMesh(sun.positions, baseRadius, 7.2, 8.49, 2);
    expect(span + 2 * 0.05).toBeCloseTo(4.6383, 4);
  });
});

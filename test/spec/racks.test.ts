import { describe, expect, it } from 'vitest';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { largestFillet, pointedDepth, standardRack } from '../../lib/tooth/racks.js';
import { soleProblem, spinner, withValue } from './table.js';

const alpha = (20 * Math.PI) / 180;

describe('basic racks', () => {
  // ISO 53:1998 table A.1: h_aP*, h_fP*, rho_fP* (figures from memory).
  it.each([
    ['A', 1, 1.25, 0.38],
    ['B', 1, 1.25, 0.3],
    ['C', 1, 1.25, 0.25],
    ['D', 1, 1.4, 0.39],
  ])('profile %s has the sizes of ISO 53', (name, addendum, dedendum, fillet) => {
    expect(resolveSpec(withValue('rack', name)).rack).toEqual({ addendum, dedendum, fillet });
  });

  it('is profile B where the file says nothing', () => {
    expect(resolveSpec(spinner()).rack).toEqual({ addendum: 1, dedendum: 1.25, fillet: 0.3 });
  });

  // ISO 53:1998 clause 5 (from memory, recomputed): 0.38 m at a clearance of 0.25 m, 0.3939 m at h_fP = 1.4 m,
  // and both formulas meet at a clearance of 0.295 m.
  it('has the largest fillets of ISO 53 clause 5', () => {
    expect(largestFillet({ addendum: 1, dedendum: 1.25, fillet: 0 }, alpha)).toBeCloseTo(0.38, 4);
    expect(largestFillet({ addendum: 1, dedendum: 1.4, fillet: 0 }, alpha)).toBeCloseTo(0.3939, 4);
    const below = largestFillet({ addendum: 1, dedendum: 1.29, fillet: 0 }, alpha);
    const above = largestFillet({ addendum: 1, dedendum: 1.3, fillet: 0 }, alpha);
    expect(below).toBeCloseTo(0.29 / (1 - Math.sin(alpha)), 2);
    expect(above).toBeCloseTo((Math.PI / 4 - 1.3 * Math.tan(alpha)) / Math.tan(Math.PI / 4 - alpha / 2), 12);
  });

  it('accepts own sizes up to the largest fillet and offers that one beyond', () => {
    const rack = { addendum: 1, dedendum: 1.25, fillet: 0.38 };
    expect(resolveSpec(withValue('rack', rack)).rack).toEqual(rack);
    const problem = soleProblem(withValue('rack', { ...rack, fillet: 0.39 }));
    expect(problem).toMatchObject({ parameter: 'rack.fillet', value: 0.39, nearest: [0.38] });
  });

  it('keeps the fillet of a standard profile inside its rack at every pressure angle', () => {
    for (let angle = 14; angle <= 30; angle += 0.25)
      for (const name of ['A', 'B', 'C', 'D'] as const) {
        const a = (angle * Math.PI) / 180;
        const rack = standardRack(name, a);
        if (rack.dedendum > pointedDepth(a)) continue;
        expect(rack.fillet).toBeLessThanOrEqual(largestFillet(rack, a));
        // The rounding's own width and the slope beside it fit into half the rack tooth.
        const half = (rack.dedendum - rack.fillet) * Math.tan(a) + rack.fillet / Math.cos(a);
        expect(half).toBeLessThanOrEqual(Math.PI / 4 + 1e-9);
      }
  });

  it('refuses profile D where its teeth come to a point and offers those that do not', () => {
    const problem = soleProblem({ ...spinner(), rack: 'D', pressureAngle: 30 });
    expect(problem).toMatchObject({ parameter: 'rack', value: 'D', nearest: ['A', 'B', 'C'] });
  });

  it('wants a dedendum above the addendum and below the point of the rack tooth', () => {
    const short = soleProblem(withValue('rack', { addendum: 1.2, dedendum: 1.2, fillet: 0 }));
    expect(short).toMatchObject({ parameter: 'rack.dedendum', nearest: [1.45] });
    const deep = soleProblem({
      ...spinner(),
      pressureAngle: 25,
      rack: { addendum: 1, dedendum: 1.9, fillet: 0 },
    });
    expect(deep.parameter).toBe('rack.dedendum');
    expect(deep.nearest[0]).toBeCloseTo(Math.PI / 4 / Math.tan((25 * Math.PI) / 180), 3);
  });
});

import { describe, expect, it } from 'vitest';
import { inspectSet } from '../../lib/proof/proveSet.js';
import { Refusal } from '../../lib/refusal.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { fitSet } from '../planetarySets.js';
import { planetary } from '../sets.js';

const narrow = {
  kind: 'planetary',
  module: 2.25,
  faceWidth: 5.5,
  sun: { teeth: 12, profileShift: 0.6 },
  planets: { teeth: 18, count: 3 },
  retention: 'lips',
};

/** The refusal of a file, with every offer put in place, until it is made. */
function made(file: Record<string, unknown>) {
  const offers: string[] = [];
  for (let step = 0; step < 3; step++) {
    const given: Record<string, unknown> = {
      ...file,
      ...Object.fromEntries(offers.map((one) => JSON.parse(one))),
    };
    try {
      const spec = planetary(resolveSpec(given));
      expect(buildSet(spec).length).toBe(5);
      return { offers, spec };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      for (const { parameter, nearest } of error.problems)
        offers.push(JSON.stringify([parameter, nearest[0]]));
    }
  }
  throw new Error(`no offer led to a set: ${offers.join(' ')}`);
}

describe('lips on a small face', () => {
  it.each([
    {},
    { helix: { angle: 28 }, fit: { gap: 0.31 } },
    ...[35, 39, 40, 40.88, 41, 42].map((angle) => ({ helix: { angle } })),
  ])('are refused early with a face that works, or made: %j', (change) => {
    const { offers, spec } = made({ ...narrow, ...change });
    expect(offers.length).toBeLessThanOrEqual(1);
    if (Object.keys(change).length) return;
    const lacking = inspectSet(spec).checks.filter(({ holds, level }) => !holds && level === 'must');
    expect(lacking).toEqual([]);
  });

  it('and bevels on all gears leave a fifth of the face between the cones of both ends', () => {
    for (const faceWidth of [5, 7, 9, 12, 18, 30])
      for (const on of ['sun', 'ring', 'both']) {
        const file = { ...narrow, sun: { teeth: 12 }, faceWidth, lips: { on } };
        try {
          const { ends, profiles } = fitSet(planetary(resolveSpec(file)));
          for (const part of ['sun', 'planet', 'ring'] as const) {
            const { bevelSize, lips } = ends[part];
            const depth = Math.abs(profiles[part].rootRadius - profiles[part].tipRadius);
            // At 45° cones are as high as they are deep.
            expect(bevelSize).toBeLessThanOrEqual(0.4 * faceWidth + 1e-9);
            if (lips) expect(depth - bevelSize).toBeLessThanOrEqual(0.4 * faceWidth + 1e-9);
          }
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
        }
      }
  });
});

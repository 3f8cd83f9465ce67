import fc from 'fast-check';
import { expect } from 'vitest';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { evenly } from '../../evenly.js';
import { lump } from './fixtures.js';
import type { Placement } from './placement.js';

export { evenly as uniform };

/** Random lumpy balls for fast-check. */
export const lumps: fc.Arbitrary<Mesh> = fc
  .array(evenly(0.5, 1.5), { minLength: 66, maxLength: 66 })
  .map(lump);

/** Random placements for fast-check, shifted by up to `reach` along each axis. */
export function placements(reach: number): fc.Arbitrary<Placement> {
  const turn = evenly(-Math.PI, Math.PI);
  const shift = evenly(-reach, reach);
  return fc.record({
    turns: fc.tuple(turn, turn, turn),
    scale: evenly(0.2, 3),
    mirrored: fc.boolean(),
    shift: fc.tuple(shift, shift, shift),
  });
}

/** Runs a property with a fresh seed and prints it, so that any run can be repeated with FUZZ_SEED. */
export function fuzz<T>(property: fc.IProperty<T>, numRuns = 100): void {
  const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 2 ** 31);
  console.info(`seed ${seed}: ${expect.getState().currentTestName}`);
  // Shrinking a mesh of random numbers takes minutes and tells nothing.
  fc.assert(property, { seed, numRuns, endOnFailure: true });
}

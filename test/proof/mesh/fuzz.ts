import fc from 'fast-check';
import { expect } from 'vitest';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { lump } from './fixtures.js';
import type { Placement } from './placement.js';

/** Evenly spread numbers: `fc.double` mostly gives numbers next to 0. */
export function uniform(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 2 ** 30 }).map((part) => min + ((max - min) * part) / 2 ** 30);
}

/** Random lumpy balls for fast-check. */
export const lumps: fc.Arbitrary<Mesh> = fc
  .array(uniform(0.5, 1.5), { minLength: 66, maxLength: 66 })
  .map(lump);

/** Random placements for fast-check, shifted by up to `reach` along each axis. */
export function placements(reach: number): fc.Arbitrary<Placement> {
  const turn = uniform(-Math.PI, Math.PI);
  const shift = uniform(-reach, reach);
  return fc.record({
    turns: fc.tuple(turn, turn, turn),
    scale: uniform(0.2, 3),
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

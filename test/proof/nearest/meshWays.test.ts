import { describe, expect, it } from 'vitest';
import { keepBudget } from '../../../lib/proof/meshBudget.js';
import { helpedRefusal } from '../../../lib/proof/nearest/help.js';
import { isMeshed } from '../../../lib/proof/nearest/meshWays.js';
import { problemOf, Refusal } from '../../../lib/refusal.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import { setOf } from '../../sets.js';

/** A set as no file could ask for it: 2 million triangles. */
const tooFine = { ...setOf(15, 15, 45, 5), tolerance: 0.0003, faceWidth: 40 };

function refusalOf(make: () => void): Refusal {
  try {
    make();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('finished meshes', () => {
  it('of more than a million triangles are refused, with the coarser tolerance that was tried', () => {
    const refusal = refusalOf(() => keepBudget(tooFine, buildSet(tooFine)));
    expect(refusal.message).toMatch(
      /^tolerance: 0.0003: is too fine for this set: 2.\d+ million triangles, at most 1$/,
    );
    const helped = helpedRefusal(tooFine, refusal);
    expect(helped.parameter).toBe('tolerance');
    const [tolerance] = helped.nearest as number[];
    const triangles = buildSet({ ...tooFine, tolerance }).reduce(
      (sum, { mesh }) => sum + mesh.triangles.length / 3,
      0,
    );
    expect(triangles).toBeLessThanOrEqual(1_000_000);
    expect(triangles).toBeGreaterThan(500_000);
  });

  it('that no division brings within tolerance are refused with something that was built', () => {
    const spec = resolveSpec({
      kind: 'planetary',
      module: 2,
      faceWidth: 10,
      fit: { gap: 0.5 },
      tolerance: 0.2,
      sun: { teeth: 15 },
      planets: { teeth: 15, count: 3 },
    });
    // No tolerance is coarser, so something else is looked for.
    const refusal = new Refusal([problemOf('not-meshable', 'tolerance', 0.2, 'is not kept')]);
    const helped = helpedRefusal(spec, refusal);
    expect(helped.parameter).toBe('bevel.size');
    const [size] = helped.nearest as number[];
    expect(isMeshed({ ...spec, bevel: { ...spec.bevel, size } })).toBe(true);
    expect(helped.message).toMatch(
      /with tolerance 0.2: is not kept; helix.angle [\d.]+; faceWidth [\d.]+ would do too; nearest that works: [\d.]+$/,
    );
  });
});

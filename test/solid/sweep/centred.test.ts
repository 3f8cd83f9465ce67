import { describe, expect, it } from 'vitest';
import { centred } from '../../../lib/solid/sweep/centred.js';
import { deviations } from '../../../lib/solid/sweep/deviations.js';
import { pitchMesh } from '../../../lib/solid/sweep/pitchMesh.js';
import { stepsFor } from '../../../lib/solid/sweep/steps.js';
import { fitted, sweptGears } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const coarse = { flank: 0.02, land: 0.04, root: 0.04 };
const allowed = { flank: Infinity, land: Infinity, root: Infinity };

function divided(form: string, angle: number) {
  const spec = setOf(15, 15, 45, 5, { helix: { form, angle } });
  return sweptGears(fitted(spec)).map(({ first, profile, sweep }) => {
    const steps = stepsFor(profile, coarse, false);
    const exact = deviations(pitchMesh(profile, sweep, steps), profile, sweep);
    const mesh = centred({ steps, measured: exact }, profile, sweep, allowed);
    return { first, exact, moved: deviations(mesh, profile, sweep) };
  });
}

describe('a pitch with its error centred', () => {
  it.each([
    ['spur', 0],
    ['helical', 20],
    ['helical', 45],
    ['herringbone', 30],
  ])('has the same triangles, none of them farther off than the farthest was: %s at %d°', (form, angle) => {
    for (const { first, exact, moved } of divided(form, angle)) {
      expect(moved.mesh.triangles.length, first).toBe(exact.mesh.triangles.length);
      expect(moved.worst.flank, first).toBeLessThanOrEqual(exact.worst.flank + 1e-12);
      const farthest = ({ flank, land, root }: typeof moved.worst) => Math.max(flank, land, root);
      // Lands grow along themselves by what stands back, and their chords with them.
      expect(farthest(moved.worst), first).toBeLessThanOrEqual(1.01 * farthest(exact.worst));
    }
  });

  it('stands back by three quarters of the sagitta: on the flanks of a spur ring that is what is left', () => {
    const { exact, moved } = divided('spur', 0)[2];
    expect(moved.worst.flank / exact.worst.flank).toBeCloseTo(0.75, 6);
  });
});

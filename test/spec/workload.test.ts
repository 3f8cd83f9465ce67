import { describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { MOST_TRIANGLES } from '../../lib/spec/rules/workload.js';
import { estimatedTriangles } from '../../lib/spec/workload.js';
import { planetary } from '../sets.js';
import { type File, problemsOf, soleProblem, spinner } from './table.js';

const built = (file: File) =>
  buildSet(resolveSpec(file)).reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);

describe('the workload', () => {
  it.each<File>([
    {},
    { tolerance: 0.001 },
    { tolerance: 0.1 },
    { faceWidth: 100 },
    { module: 5 },
    { helix: { angle: 45 } },
    { helix: { form: 'helical', angle: 10 } },
    { helix: { form: 'spur' } },
    { sun: { teeth: 60 }, planets: { teeth: 30, count: 6 } },
  ])('of the spinner with %j is estimated within a factor of two', (change) => {
    const file = { ...spinner(), ...change };
    const ratio = estimatedTriangles(planetary(resolveSpec(file))) / built(file);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(2);
  });

  it('refuses a mesh of tens of millions of triangles before any is made, offering a tolerance', () => {
    const file = {
      ...spinner(),
      module: 0.42,
      faceWidth: 30,
      helix: { angle: 45 },
      sun: { teeth: 396 },
      planets: { teeth: 24, count: 12 },
      tolerance: 0.0005,
    };
    const problem = soleProblem(file);
    expect(problem.parameter).toBe('tolerance');
    expect(MOST_TRIANGLES).toBe(1_000_000);
    const eased = planetary(resolveSpec({ ...file, tolerance: problem.nearest[0] }));
    expect(estimatedTriangles(eased)).toBeLessThanOrEqual(MOST_TRIANGLES);
    expect(estimatedTriangles({ ...eased, tolerance: eased.tolerance - 0.0001 })).toBeGreaterThan(
      MOST_TRIANGLES,
    );
  });

  it('offers a narrower face as well where no tolerance is coarse enough', () => {
    const file = {
      ...spinner(),
      module: 0.42,
      faceWidth: 300,
      helix: { angle: 45 },
      sun: { teeth: 396 },
      planets: { teeth: 24, count: 12 },
    };
    const problems = problemsOf(file);
    expect(problems.map(({ parameter }) => parameter)).toEqual(['tolerance', 'faceWidth']);
    const offers = Object.fromEntries(problems.map(({ parameter, nearest }) => [parameter, nearest[0]]));
    expect(estimatedTriangles(resolveSpec({ ...file, ...offers }))).toBeLessThanOrEqual(MOST_TRIANGLES);
  });

  it('counts chords of small teeth as fine as they are drawn, however coarse the tolerance', () => {
    const file = { ...spinner(), module: 0.5, tolerance: 0.1 };
    const ratio = estimatedTriangles(planetary(resolveSpec(file))) / built(file);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(2);
  });
});

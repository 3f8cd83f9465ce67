import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { skipOf } from '../../lib/fit/skip.js';
import { proveSet } from '../../lib/proof/proveSet.js';
import { setNumbers } from '../planetarySets.js';
import { setOf } from '../sets.js';

/** Counts of sets that assemble; teeth enough that none is refused for its tips. */
const counts = fc
  .record({
    sun: fc.integer({ min: 12, max: 30 }),
    planet: fc.integer({ min: 12, max: 24 }),
    count: fc.integer({ min: 2, max: 6 }),
  })
  .filter(
    ({ sun, planet, count }) =>
      (2 * sun + 2 * planet) % count === 0 && (sun + planet) * Math.sin(Math.PI / count) > planet + 2.5,
  );

const shape = fc.record({
  form: fc.constantFrom('spur', 'helical', 'herringbone'),
  angle: fc.integer({ min: 5, max: 40 }),
  hand: fc.constantFrom('left', 'right'),
  module: fc.constantFrom(1, 1.5, 2.5),
  gap: fc.integer({ min: 10, max: 40 }).map((hundredths) => hundredths / 100),
  gapShare: fc.constantFrom(0, 0.5, 1),
});

describe('over random sets', () => {
  it('the gaps measured are the gaps asked', () => {
    fc.assert(
      fc.property(counts, shape, ({ sun, planet, count }, { form, angle, hand, module, gap, gapShare }) => {
        const spec = setOf(sun, planet, sun + 2 * planet, count, {
          module,
          faceWidth: 10,
          helix: { form, angle: form === 'spur' ? 0 : angle, hand },
          fit: { gap, gapShare },
          printer: { bed: { width: 400, depth: 400 } },
        });
        const { sheet } = proveSet(spec);
        const failing = sheet.checks
          .filter(({ holds, level }) => !holds && level === 'must')
          .map(({ id }) => id);
        // Wide gaps on fine teeth may leave no tip, or too little contact; then nothing is built, and rightly so.
        if (failing.some((id) => id === 'tip-thickness' || id === 'contact-ratio')) return;
        expect(failing).toEqual([]);
        for (const { gap: measured } of sheet.meshes) {
          expect(Math.abs(measured.rollingLeast! - gap)).toBeLessThanOrEqual(0.03 * gap);
          expect(Math.abs(measured.bodies! - gap)).toBeLessThanOrEqual(Math.max(0.03 * gap, spec.tolerance));
        }
      }),
      { numRuns: 12 },
    );
  });

  it('more teeth at the same size never deepen the engagement', () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 2, max: 4 }), ({ sun, planet, count }, times) => {
        const depth = (factor: number) =>
          skipOf(
            setNumbers(
              setOf(factor * sun, factor * planet, factor * (sun + 2 * planet), count, {
                module: 4 / factor,
                fit: { gap: 0.1 },
              }),
            ),
          );
        expect(depth(times).workingDepth).toBeLessThanOrEqual(depth(1).workingDepth);
        expect(depth(times).engagementLeft).toBeLessThanOrEqual(depth(1).engagementLeft);
      }),
      { numRuns: 100 },
    );
  });
});

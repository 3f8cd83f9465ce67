import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fasteners } from '../../lib/features/fasteners.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { evenly } from '../evenly.js';
import { planetary } from '../sets.js';
import { type File, problemsOf, soleProblem, spinner, withValue } from '../spec/table.js';

const spinnerWith = (path: string, value: unknown) => withValue(path, value);

describe('fasteners', () => {
  // ISO 273:1979 clearance holes and ISO 4032 nuts as tabulated publicly, M2 to M6 read, larger ones from memory.
  it('have the clearance holes of ISO 273 and the nuts of ISO 4032', () => {
    expect(fasteners.M2).toMatchObject({ fine: 2.2, medium: 2.4, coarse: 2.6, nutFlats: 4, nutHeight: 1.6 });
    expect(fasteners['M2.5']).toMatchObject({
      fine: 2.7,
      medium: 2.9,
      coarse: 3.1,
      nutFlats: 5,
      nutHeight: 2,
    });
    expect(fasteners.M3).toMatchObject({
      fine: 3.2,
      medium: 3.4,
      coarse: 3.6,
      nutFlats: 5.5,
      nutHeight: 2.4,
    });
    expect(fasteners.M4).toMatchObject({ fine: 4.3, medium: 4.5, coarse: 4.8, nutFlats: 7, nutHeight: 3.2 });
    expect(fasteners.M5).toMatchObject({ fine: 5.3, medium: 5.5, coarse: 5.8, nutFlats: 8, nutHeight: 4.7 });
    expect(fasteners.M6).toMatchObject({ fine: 6.4, medium: 6.6, coarse: 7, nutFlats: 10, nutHeight: 5.2 });
    expect(fasteners.M8).toMatchObject({ fine: 8.4, medium: 9, coarse: 10, nutFlats: 13, nutHeight: 6.8 });
    expect(fasteners.M10).toMatchObject({ fine: 10.5, medium: 11, coarse: 12, nutFlats: 16, nutHeight: 8.4 });
    expect(fasteners.M12).toMatchObject({
      fine: 13,
      medium: 13.5,
      coarse: 14.5,
      nutFlats: 18,
      nutHeight: 10.8,
    });
  });
  // ISO 10642: a 90° head is as high as the difference of its radii; M4: (8.96 − 4) / 2 = 2.48 = k.
  it('have the heads of ISO 10642', () => {
    for (const [size, head, height] of [
      ['M3', 6.72, 1.86],
      ['M4', 8.96, 2.48],
      ['M5', 11.2, 3.1],
      ['M6', 13.44, 3.72],
    ] as const) {
      expect(fasteners[size].headDiameter).toBe(head);
      expect((head - Number(size.slice(1))) / 2).toBeCloseTo(height, 9);
    }
  });
});

describe('features of a file', () => {
  it('get their sizes from the tables, and keep them when resolved again', () => {
    const spec = planetary(
      resolveSpec({
        ...spinner(),
        sun: { teeth: 15, nut: { size: 'M4', at: 'bottom' }, text: 'none' },
        ring: { rim: 6, mount: { hole: 98, panel: 12 } },
      }),
    );
    expect(spec.sun.nut).toEqual({
      size: 'M4',
      series: 'medium',
      at: 'bottom',
      clearance: 0.2,
      acrossFlats: 7.2,
      depth: 3.4,
      diameter: 4.5,
    });
    expect(spec.sun).not.toHaveProperty('text');
    expect(spec.ring.mount).toMatchObject({
      screw: 'M3',
      screws: 6,
      circle: 109,
      diameter: 3.4,
      headDiameter: 6.72,
      clamp: 4.6,
    });
    expect(spec.ring.flange).toEqual({ diameter: 120, thickness: 4, at: 'bottom' });
    expect(resolveSpec(spec)).toEqual(spec);
  });

  // The sun's root circle has 22.23 mm (15 teeth of 1.5 at 30°: 25.981 − 2 × 1.25 × 1.5); two lines are 0.9 mm.
  it.each<[string, unknown, string, unknown]>([
    ['sun.knob', { diameter: 30, height: 5 }, 'sun.knob.diameter', 20.43],
    ['sun.nut', { size: 'M12' }, 'sun.nut.acrossFlats', 17.693],
    ['planets.hole', { diameter: 40 }, 'planets.hole.diameter', 20.43],
    ['planets.pocket', { diameter: 10, depth: 19.5 }, 'planets.pocket.depth', 19.2],
    ['planets.dimple', { diameter: 10, depth: 8 }, 'planets.dimple.depth', 5],
    ['ring.grip', { count: 10, depth: 4 }, 'ring.grip.depth', 3.15],
    ['ring.flange', { diameter: 60, thickness: 3 }, 'ring.flange.diameter', 91.592],
    ['ring.bolts', { circle: 86, count: 4, size: 'M6' }, 'ring.bolts.diameter', 1.99],
    ['ring.mount', { hole: 80, panel: 12 }, 'ring.mount.hole', 90.793],
  ])('%s %o is refused with the nearest that works', (path, value, parameter, nearest) => {
    const problem = soleProblem(spinnerWith(path, value));
    expect(problem.parameter).toBe(parameter);
    if (typeof nearest === 'number') expect(problem.nearest[0]).toBeCloseTo(nearest, 1);
    const offered = spinnerWith(path, structuredClone(value));
    expect(problemsOf(withValue(parameter, problem.nearest[0], offered))).toEqual([]);
  });

  it('say which other feature they cannot be with', () => {
    const file = spinner();
    file.sun = { teeth: 15, bore: { shape: 'round', diameter: 5 }, screw: { size: 'M3' } };
    expect(soleProblem(file)).toMatchObject({ parameter: 'sun.screw', nearest: ['none'] });
    file.sun = { teeth: 15, screw: { size: 'M3' }, nut: { size: 'M4' } };
    expect(soleProblem(file)).toMatchObject({ parameter: 'sun.nut.size', nearest: ['M3'] });
  });

  it('are refused with offers that remove the problem', () => {
    const length = fc.oneof(evenly(0.5, 40), evenly(0.5, 150));
    const size = fc.constantFrom('M2', 'M3', 'M4', 'M6', 'M10', 'M12');
    const count = fc.integer({ min: 3, max: 60 });
    const end = fc.constantFrom('bottom', 'top');
    const some = <T>(shape: fc.Arbitrary<T>) => fc.option(shape, { nil: 'none' as const, freq: 2 });
    const set = fc.record({
      faceWidth: fc.constantFrom(2, 5, 12, 20),
      sun: fc.record({
        screw: some(fc.record({ size, countersink: fc.constantFrom('none', 'bottom', 'top') })),
        nut: some(fc.record({ size, at: end })),
        knob: some(fc.record({ diameter: length, height: length })),
        crank: some(fc.record({ acrossFlats: length, depth: length })),
      }),
      planets: fc.record({
        hole: some(fc.record({ diameter: length })),
        dimple: some(fc.record({ diameter: length, depth: length })),
        pocket: some(fc.record({ diameter: length, depth: length })),
      }),
      ring: fc.record({
        rim: fc.constantFrom(3, 5, 9),
        grip: some(fc.record({ count, depth: evenly(0.2, 8) })),
        flange: some(
          fc.record({
            diameter: evenly(60, 150),
            thickness: evenly(0.4, 20),
            at: end,
          }),
        ),
        bolts: some(fc.record({ circle: evenly(60, 150), count, size })),
        mount: some(
          fc.record({
            hole: evenly(60, 150),
            panel: fc.constant(12),
            screw: size,
            screws: count,
          }),
        ),
      }),
    });
    const bare = ({ faceWidth, sun, planets, ring }: File): File => ({
      ...spinner(),
      faceWidth,
      sun: { teeth: 15, ...sun },
      planets: { teeth: 15, count: 5, ...planets },
      ring: { ...ring },
    });
    let refused = 0;
    fc.assert(
      fc.property(set, (features) => {
        for (const { parameter, nearest } of problemsOf(bare(features))) {
          refused++;
          expect(nearest.length).toBeGreaterThan(0);
          for (const offer of nearest) {
            const left = problemsOf(withValue(parameter, offer, structuredClone(bare(features))));
            expect(left.map((problem) => problem.parameter)).not.toContain(parameter);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import { proveSet } from '../../lib/proof/proveSet.js';
import { Refusal } from '../../lib/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { PairSpec, PlanetarySpec } from '../../lib/spec/types.js';
import { setNumbers } from '../planetarySets.js';
import { refusalOf } from '../refusalOf.js';
import { setOf } from '../sets.js';
import { type File, withValue } from '../spec/table.js';

const set = (module: number, [sun, planet, count]: number[], more: object) => ({
  kind: 'planetary' as const,
  module,
  faceWidth: 9,
  tolerance: 0.03,
  sun: { teeth: sun },
  planets: { teeth: planet, count },
  profileShift: 'solve' as const,
  ...more,
});

describe('features of gears whose shifts are found', () => {
  it('a bore that leaves no wall is refused with one that does', () => {
    const bored = (diameter: number) =>
      setNumbers(
        setOf(15, 14, 45, 5, {
          profileShift: 'solve',
          helix: { form: 'spur' },
          sun: { teeth: 15, bore: { shape: 'round', diameter } },
        }),
      );
    const { parameter, nearest } = refusalOf(() => bored(18.5));
    expect(parameter).toBe('sun.bore.diameter');
    expect(() => bored(nearest[0] as number)).not.toThrow();
  });

  it.each([
    ['ring.bolts', set(1, [18, 9, 3], { ring: { bolts: { circle: 61, count: 6, size: 'M2' } } })],
    [
      'ring.flange.diameter',
      set(2.8, [9, 18, 3], { ring: { flange: { diameter: 158, thickness: 2, at: 'top' } } }),
    ],
    [
      'ring.bolts.circle',
      set(2.5, [27, 15, 7], {
        ring: { bolts: { circle: 172.5, count: 6, size: 'M4' } },
        retention: 'lips',
        faceWidth: 10,
      }),
    ],
  ])('%s that finds no room is refused before anything is built, and the offer is made', (path, file) => {
    const { parameter, nearest } = refusalOf(() => proveSet(resolveSpec(file)));
    expect(parameter).toBe(path);
    const other: File = structuredClone(file);
    withValue(parameter, nearest[0], other);
    const { sheet } = proveSet(resolveSpec(other));
    expect(sheet.checks.filter(({ holds, level }) => !holds && level === 'must')).toEqual([]);
  });
});

/** Small teeth with a gap wider than the rack's clearance, so that roots are deepened, or not, by the pairs. */
const shifted = fc.record({
  module: fc.constantFrom(0.5, 0.8, 1.5),
  gap: fc.constantFrom(0.1, 0.3, 0.35),
  solve: fc.boolean(),
  shifts: fc.tuple(fc.integer({ min: -2, max: 5 }), fc.integer({ min: -2, max: 5 })),
  circle: fc.integer({ min: -30, max: 30 }),
  diameter: fc.constantFrom(0.5, 1, 2),
  bore: fc.integer({ min: 0, max: 20 }),
  lineWidth: fc.constantFrom(0.1, 0.45),
});

describe('walls beside teeth as they are made', () => {
  it('are two lines thick or more around bolts and bores, whatever the shifts', () => {
    let taken = 0;
    fc.assert(
      fc.property(shifted, ({ module, gap, solve, shifts, circle, diameter, bore, lineWidth }) => {
        const of = (shift: number) => (solve ? {} : { profileShift: shift / 10 });
        const outer = module * 53.5 + 3;
        const numbers = (): ReturnType<typeof setNumbers> =>
          setNumbers(
            resolveSpec({
              ...set(module, [15, 18, 3], { profileShift: solve ? 'solve' : 'none' }),
              sun: {
                teeth: 15,
                ...of(shifts[0]),
                bore: { shape: 'round', diameter: 0.5 + (bore * module) / 2 },
              },
              planets: { teeth: 18, count: 3, ...of(shifts[1]) },
              ring: { bolts: { circle: outer + circle / 15, count: 3, size: 'M2', diameter } },
              helix: { form: 'spur' },
              fit: { gap },
              printer: { lineWidth },
            }) as PlanetarySpec,
          );
        try {
          const { spec, radii } = numbers();
          const wall = 2 * lineWidth - 1e-6;
          const { bolts, rim } = spec.ring;
          const inner = bolts!.circle / 2 - diameter / 2;
          expect(inner - radii.ring.root).toBeGreaterThanOrEqual(wall);
          expect(radii.ring.root + rim - (inner + diameter)).toBeGreaterThanOrEqual(wall);
          if (spec.sun.bore.shape === 'round')
            expect(radii.sun.root - spec.sun.bore.diameter / 2).toBeGreaterThanOrEqual(wall);
          taken++;
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
        }
      }),
      { numRuns: 400 },
    );
    expect(taken).toBeGreaterThan(20);
  });

  it('offers for a pair hold beside roots that its own centre distance makes', () => {
    const pair = (diameter: number, x: number) =>
      trainNumbers(
        resolveSpec({
          kind: 'pair',
          module: 0.8,
          faceWidth: 5,
          fit: { gap: 0.4 },
          pinion: { teeth: 20, profileShift: x, bore: { shape: 'round', diameter } },
          wheel: { teeth: 30, profileShift: x },
        }) as PairSpec,
      );
    for (const x of [-0.3, 0, 0.4]) {
      const { parameter, nearest } = refusalOf(() => pair(15.5, x));
      expect(parameter).toBe('pinion.bore.diameter');
      const [{ radii }] = pair(nearest[0] as number, x).gears;
      expect(radii.root - (nearest[0] as number) / 2 - 0.9).toBeGreaterThanOrEqual(-1e-9);
      // No more is taken than the wall needs: offers are whole thousandths of a diameter.
      expect(radii.root - (nearest[0] as number) / 2 - 0.9).toBeLessThan(0.002);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeDefects } from '../../../lib/proof/mesh/edges.js';
import { proveSet } from '../../../lib/proof/proveSet.js';
import { Refusal } from '../../../lib/refusal.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import { fitSet } from '../../planetarySets.js';

const cage = (planet: number) => ({
  kind: 'planetary' as const,
  module: 1,
  faceWidth: 10,
  helix: { form: 'spur' as const },
  sun: { teeth: 12 },
  planets: { teeth: planet, count: 4 },
  carrier: { plates: 'both' as const, form: 'cage' as const },
});
const pinned = {
  kind: 'planetary' as const,
  module: 1,
  faceWidth: 5,
  tolerance: 0.1,
  sun: { teeth: 12 },
  planets: { teeth: 18, count: 4 },
  carrier: {},
};

describe('a carrier', () => {
  it.each([
    ['whose posts reach farther out than a bridge', cage(12)],
    ['with pins, beside the feet of teeth drawn coarsely', pinned],
    [
      'with posts across half the set',
      {
        ...cage(39),
        module: 2.5,
        faceWidth: 6,
        sun: { teeth: 35 },
        planets: { teeth: 39, count: 2 },
        carrier: { plates: 'above', form: 'cage' },
      },
    ],
  ])('%s is proved', (_, file) => {
    const { sheet } = proveSet(resolveSpec(file));
    expect(sheet.checks.filter(({ holds, level }) => !holds && level === 'must')).toEqual([]);
  });

  it.each([14, 16, 18])('as a cage around planets of %i teeth is closed', (planet) => {
    const carrier = buildSet(resolveSpec(cage(planet))).find(({ name }) => name === 'carrier')!;
    const { open, doubled, misoriented } = edgeDefects(carrier.mesh);
    expect([open, doubled, misoriented]).toEqual([0, 0, 0]);
  });
});

/** Sets that assemble, with every kind of carrier, coarse and fine. */
const counts = fc.constantFrom<[number, number, number][]>(
  [12, 12, 4],
  [8, 19, 2],
  [30, 15, 5],
  [25, 31, 2],
  [15, 15, 6],
  [20, 10, 3],
);
const carrier = fc.record(
  {
    form: fc.constantFrom('pins', 'cage'),
    plates: fc.constantFrom('above', 'below', 'both'),
    thickness: fc.constantFrom(0.4, 2),
    gap: fc.constantFrom(0.05, 0.3, 0.8),
    pin: fc.record({ form: fc.constantFrom('straight', 'waisted', 'barrelled') }),
    boss: fc.record({
      shape: fc.constant('square'),
      acrossFlats: fc.integer({ min: 4, max: 20 }),
      height: fc.constant(4),
    }),
    bolts: fc.record(
      { diameter: fc.constantFrom(1, 3, 6), count: fc.integer({ min: 2, max: 9 }) },
      { requiredKeys: ['diameter'] },
    ),
  },
  { requiredKeys: ['form', 'plates'] },
);
const file = fc.record(
  {
    counts,
    carrier,
    module: fc.constantFrom(0.5, 1, 2.5, 4),
    faceWidth: fc.constantFrom(3, 8),
    tolerance: fc.constantFrom(0.03, 0.06, 0.1),
    helix: fc.constantFrom({ form: 'spur' }, { form: 'helical', angle: 30 }, { form: 'herringbone' }),
    printer: fc.record({ growth: fc.constantFrom(-0.05, 0.08), firstLayerGrowth: fc.constantFrom(0, 0.5) }),
  },
  { requiredKeys: ['counts', 'carrier', 'module', 'faceWidth', 'tolerance', 'helix'] },
);

describe('letters under a plate', () => {
  const under = (part: 'sun' | 'planets', centre: 'open' | 'closed', style: 'raised' | 'sunk') => {
    const { sun, planets, carrier: plates, ...rest } = cage(18);
    const text = { content: 'A', size: 3, style };
    const parts = { sun: part === 'sun' ? { ...sun, text } : sun };
    return resolveSpec({
      ...rest,
      ...parts,
      planets: part === 'planets' ? { ...planets, text } : planets,
      carrier: { ...plates, centre },
    });
  };

  it('are sunk', () => {
    expect(() => under('sun', 'closed', 'raised')).toThrow(/sun\.text\.style.*sunk under a plate/);
    expect(() => under('planets', 'open', 'raised')).toThrow(/planets\.text\.style.*sunk under a plate/);
    expect(() => under('planets', 'open', 'sunk')).not.toThrow();
    // An open plate leaves the sun free.
    expect(() => under('sun', 'open', 'raised')).not.toThrow();
  });
});

describe('any carrier', () => {
  it('is made, or refused before its faces are filled', () => {
    let made = 0;
    fc.assert(
      fc.property(file, ({ counts: [sun, planet, count], ...rest }) => {
        const { pin, ...cageKeys } = rest.carrier;
        const asked = {
          kind: 'planetary',
          ...rest,
          carrier: rest.carrier.form === 'cage' ? cageKeys : rest.carrier,
          sun: { teeth: sun },
          planets: { teeth: planet, count },
        };
        try {
          const spec = resolveSpec(asked);
          buildSet(spec);
          made++;
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          // Coarse against the gap, which is said before anything is made, is all that tolerance is refused for.
          if (error.parameter === 'tolerance')
            expect(error.rule).toContain('cannot tell whether the gap is kept');
          expect(error.rule).not.toContain('touch or cross');
        }
      }),
      { numRuns: 250 },
    );
    expect(made).toBeGreaterThan(50);
  });

  it('keeps the gap to the planets where chords are longest: between two planets alone', () => {
    const spec = resolveSpec({ ...cage(31), sun: { teeth: 25 }, planets: { teeth: 31, count: 2 } });
    if (spec.kind !== 'planetary') throw new Error('not a set');
    const { carrier: sizes, centreDistance, planets, profiles } = fitSet(spec);
    const axes = planets.map(({ angle }) => [
      centreDistance * Math.cos(angle),
      centreDistance * Math.sin(angle),
    ]);
    const { body } = sizes!.posts[0];
    // Many points along every chord, against the circles that it must stay outside of.
    const along = body.flatMap(([x, y], i) => {
      const [u, v] = body[(i + 1) % body.length];
      return Array.from({ length: 8 }, (_, k) => [x + ((u - x) * k) / 8, y + ((v - y) * k) / 8]);
    });
    const gap = 0.25 - 1e-9;
    for (const [x, y] of along) {
      for (const [cx, cy] of axes)
        expect(Math.hypot(x - cx, y - cy) - profiles.planet.tipRadius).toBeGreaterThanOrEqual(gap);
      expect(Math.hypot(x, y) - profiles.sun.tipRadius).toBeGreaterThanOrEqual(gap);
      expect(profiles.ring.tipRadius - Math.hypot(x, y)).toBeGreaterThanOrEqual(gap);
    }
  });
});

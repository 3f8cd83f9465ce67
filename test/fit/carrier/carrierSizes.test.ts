import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proveSet } from '../../../lib/proof/proveSet.js';
import { Refusal } from '../../../lib/refusal.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { fitSet } from '../../planetarySets.js';
import { type File, withValue } from '../../spec/table.js';

const boss = fc.oneof(
  fc.constant('none'),
  fc.record({
    shape: fc.constantFrom('hexagon', 'square'),
    acrossFlats: fc.integer({ min: 2, max: 90 }),
    height: fc.constantFrom(2, 8),
  }),
  fc.record({
    shape: fc.constant('D'),
    diameter: fc.integer({ min: 4, max: 90 }),
    acrossFlat: fc.integer({ min: 2, max: 80 }),
    height: fc.constant(5),
  }),
);
const pin = fc.record(
  {
    diameter: fc.integer({ min: 1, max: 30 }),
    form: fc.constantFrom('straight', 'waisted', 'barrelled'),
    depth: fc.constantFrom(0, 0.2, 0.8, 4),
  },
  { requiredKeys: [] },
);
const bolts = fc.oneof(
  fc.constant('none'),
  fc.record(
    {
      diameter: fc.constantFrom(2, 3.4, 12),
      count: fc.integer({ min: 2, max: 30 }),
      circle: fc.integer({ min: 4, max: 120 }),
    },
    { requiredKeys: ['diameter'] },
  ),
);
const carrier = fc.record(
  {
    form: fc.constantFrom('pins', 'cage'),
    plates: fc.constantFrom('above', 'below', 'both'),
    thickness: fc.constantFrom(0.2, 1.3, 2, 5),
    gap: fc.constantFrom(0.1, 0.3, 1.5),
    axialGap: fc.integer({ min: 1, max: 4 }),
    centre: fc.constantFrom('open', 'closed'),
    pin,
    boss,
    bolts,
  },
  { requiredKeys: ['form', 'plates'] },
);
const counts = fc.constantFrom<[number, number, number][]>(
  [15, 15, 3],
  [12, 24, 3],
  [18, 12, 5],
  [24, 12, 4],
);
const file = fc.record({ counts, carrier }).map(
  ({ counts: [sun, planet, count], carrier }): File => ({
    kind: 'planetary',
    module: 1.5,
    faceWidth: 8,
    tolerance: 0.05,
    sun: { teeth: sun },
    planets: { teeth: planet, count },
    carrier,
  }),
);

/** The first offer of every problem in its place; throws where there is none. */
function repaired(data: File, { problems }: Refusal): File {
  for (const { parameter, nearest } of problems) {
    if (!nearest.length) throw new Error(`no offer for ${parameter}`);
    withValue(parameter, nearest[0], data);
    // What is cut to fit a cage or a straight pin must not keep what only others have.
    if (parameter === 'carrier.form' && nearest[0] === 'cage') delete data.carrier.pin;
  }
  return data;
}

function taken(data: File): PlanetarySpec {
  let last: unknown;
  for (let round = 0; round < 20; round++) {
    try {
      const spec = resolveSpec(data) as PlanetarySpec;
      fitSet(spec);
      return spec;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      last = error;
      data = repaired(data, error);
    }
  }
  throw last;
}

const lipped = fc
  .record({
    counts,
    form: fc.constantFrom('spur', 'helical', 'herringbone'),
    bevel: fc.record(
      { size: fc.integer({ min: 0, max: 40 }).map((tenths) => tenths / 20) },
      { requiredKeys: [] },
    ),
    lips: fc.record(
      {
        on: fc.constantFrom('ring', 'sun', 'both'),
        gap: fc.constantFrom(0.1, 0.3, 0.6, 1.5),
        reach: fc.constantFrom(0.1, 0.5, 1, 3),
      },
      { requiredKeys: [] },
    ),
    retention: fc.constantFrom('none', 'lips', 'both', undefined),
  })
  .map(
    ({ counts: [sun, planet, count], form, bevel, lips, retention }): File => ({
      kind: 'planetary',
      module: 1.5,
      faceWidth: 12,
      helix: { form },
      sun: { teeth: sun },
      planets: { teeth: planet, count },
      bevel,
      lips,
      ...(retention && { retention }),
    }),
  );

describe('random lips', () => {
  it('are taken, or refused with offers that are taken', () => {
    fc.assert(
      fc.property(lipped, (data) => {
        const spec = taken(structuredClone(data));
        expect(resolveSpec(spec)).toEqual(spec);
      }),
      { numRuns: 300 },
    );
  });
});

describe('random carriers', () => {
  it('are taken, or refused with offers that are taken', () => {
    fc.assert(
      fc.property(file, (data) => {
        const spec = taken(structuredClone(data));
        expect(resolveSpec(spec)).toEqual(spec);
      }),
      { numRuns: 300 },
    );
  });

  it('are made with every must holding', () => {
    fc.assert(
      fc.property(file, (data) => {
        const { sheet } = proveSet(taken(structuredClone(data)));
        const failing = sheet.checks.filter(({ holds, level }) => !holds && level === 'must');
        expect(failing).toEqual([]);
        expect(sheet.parts.map(({ name }) => name)).toContain('carrier');
      }),
      { numRuns: 2 },
    );
  });
});

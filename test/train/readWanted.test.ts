import { describe, expect, it } from 'vitest';
import { planSets } from '../../lib/proof/planSets.js';
import { Refusal } from '../../lib/refusal.js';
import type { WantedSets } from '../../lib/train/planWanted.js';
import { readWanted } from '../../lib/train/readWanted.js';

function refusal(wanted: unknown): Refusal {
  try {
    readWanted(wanted as WantedSets);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error(`not refused: ${JSON.stringify(wanted)}`);
}

describe('wishes that cannot be', () => {
  it.each([
    ['a misspelt key', { planet: 5 }, 'planet', 'planets'],
    ['a misspelt key inside', { ratio: { value: 4, tolerence: 1 } }, 'ratio.tolerence', 'ratio.tolerance'],
    ['a count out of range', { planets: 1 }, 'planets', 2],
    ['part of a tooth', { sunTeeth: 15.4 }, 'sunTeeth', 15],
    ['a span the wrong way round', { planets: { least: 7, most: 3 } }, 'planets', { least: 3, most: 7 }],
    ['a span with one end', { planets: { least: 3 } }, 'planets.most', undefined],
    ['a module out of range', { module: 25 }, 'module', 20],
    ['one of several modules', { module: [1, 0] }, 'module[1]', 0.2],
    ['no module', { module: [] }, 'module', [1.5]],
    ['modules between two standard ones', { module: { least: 1.52, most: 1.6 } }, 'module', 1.5],
    ['not a number', { outerDiameter: Number.NaN }, 'outerDiameter', undefined],
    ['a negative opening', { opening: -1 }, 'opening', 0],
    ['a ratio of zero', { ratio: { value: 0 } }, 'ratio.value', 0.001],
    ['a ratio that is not one', { ratio: { value: Number.NaN } }, 'ratio.value', undefined],
    ['a ratio without a value', { ratio: { held: 'sun' } }, 'ratio.value', undefined],
    ['a bare ratio', { ratio: 4 }, 'ratio', { value: 4 }],
    ['a member that is not there', { ratio: { value: 4, held: 'rign' } }, 'ratio.held', 'ring'],
    ['an unknown rack', { rack: 'E' }, 'rack', undefined],
    ['a rack with a part missing', { rack: { addendum: 1, dedendum: 1.25 } }, 'rack.fillet', undefined],
    ['a helix too steep', { helixAngle: 60 }, 'helixAngle', 45],
    ['spur teeth with an angle', { helixForm: 'spur', helixAngle: 20 }, 'helixAngle', 0],
    ['a helix next to none', { helixAngle: 0.5 }, 'helixAngle', 1],
    ['a helix of another form', { helixForm: 'helicl' }, 'helixForm', 'helical'],
    ['a merit that is not one', { by: 'opennig' }, 'by', 'opening'],
    ['near to no ratio', { by: 'ratio' }, 'by', 'overall'],
    ['a gap too wide for every module', { gap: 1.9, module: [1, 2] }, 'gap', 1.5],
    ['a merit that any object has', { by: 'toString' }, 'by', undefined],
    ['no rows', { limit: 0 }, 'limit', 1],
  ])('%s', (_, wanted, parameter, nearest) => {
    const found = refusal(wanted);
    const problem = found.problems.find((one) => one.parameter === parameter);
    expect(problem, found.message).toBeDefined();
    if (nearest !== undefined) expect(problem!.nearest[0]).toEqual(nearest);
    for (const offer of problem!.nearest) expect(offer).not.toBeNaN();
  });

  it('are all named at once', () => {
    const { problems } = refusal({ planets: 40, module: -1, colour: 'blue' });
    expect(problems.map(({ parameter }) => parameter).sort()).toEqual(['colour', 'module', 'planets']);
  });

  it('are refused by the search too', () => {
    expect(() => planSets({ planets: 1 })).toThrow(Refusal);
  });
});

describe('wishes completed', () => {
  it('a single number is a span of its own, modules come sorted and once', () => {
    const full = readWanted({ sunTeeth: 15, module: [2, 1, 2] });
    expect(full.sunTeeth).toEqual({ least: 15, most: 15 });
    expect(full.module).toEqual([1, 2]);
    expect(readWanted({ module: 1.7 }).module).toEqual([1.7]);
    expect(readWanted({ module: { least: 1.3, most: 2 } }).module).toEqual([1.375, 1.5, 1.75, 2]);
  });

  it('a ratio keeps its sign and gets 2 % of room', () => {
    expect(readWanted({ ratio: { value: -3, held: 'carrier' } }).ratio).toEqual({
      value: -3,
      tolerance: 0.06,
      held: 'carrier',
    });
    const found = planSets({ module: 1, ratio: { value: -3, held: 'carrier' }, limit: 500 }).rows;
    expect(found.length).toBeGreaterThan(0);
    for (const row of found) expect(Math.abs(row.ratios.carrierHeld + 3)).toBeLessThanOrEqual(0.06);
  });
});

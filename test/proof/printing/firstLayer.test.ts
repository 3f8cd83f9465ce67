import { describe, expect, it } from 'vitest';
import { firstLayer } from '../../../lib/proof/checks/firstLayer.js';
import { meshArea, meshBounds } from '../../../lib/proof/mesh/volume.js';
import { firstLayerGap, wallsBelow } from '../../../lib/proof/printing/firstLayer.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { referenceSet, setOf } from '../../sets.js';
import { box } from '../mesh/fixtures.js';

const checkOf = (spec: PlanetarySpec) => firstLayer({ spec, parts: buildSet(spec) });

describe('walls below a height', () => {
  it('are cut there, and leave out what lies flat on the bed', () => {
    const cut = wallsBelow(box([0, 0, 0], [2, 3, 5]), 1.5);
    expect(meshBounds(cut)).toMatchObject({ min: [0, 0, 0], max: [2, 3, 1.5] });
    expect(meshArea(cut)).toBeCloseTo(2 * (2 + 3) * 1.5, 12);
  });

  it('keep everything where all is below', () => {
    expect(meshArea(wallsBelow(box([0, 0, 0], [2, 3, 5]), 5))).toBeCloseTo(2 * (2 * 5 + 3 * 5) + 2 * 3, 12);
  });

  it('share the vertices of cut edges', () => {
    // Four corners below, and above them one cut for each upright edge and each diagonal.
    expect(wallsBelow(box([0, 0, 0], [2, 3, 5]), 1).positions.length / 3).toBe(4 + 4 + 4);
  });
});

describe('the first layer', () => {
  it('is measured between all neighbours, in that layer alone', () => {
    const parts = [
      { name: 'sun', mesh: box([0, 0, 0], [1, 1, 3]) },
      { name: 'planet-1', mesh: box([1.4, 0, 0], [2.4, 1, 3]) },
      { name: 'ring', mesh: box([2.7, 0, 0], [3.7, 1, 3]) },
    ];
    // Only 0.1 mm away, but higher up.
    parts.push({ ...parts.pop()!, name: 'planet-2' }, { name: 'ring', mesh: box([0, 1.1, 2], [1, 2, 3]) });
    expect(firstLayerGap(parts, 0.2, 2)).toMatchObject({ between: ['planet-1', 'planet-2'] });
    expect(firstLayerGap(parts, 0.2, 2)!.distance).toBeCloseTo(0.3, 12);
    expect(firstLayerGap(parts, 0.2, 0.25)).toBeNull();
  });

  it('is measured between parts that are no neighbours too: one that is joined to a ring may reach a clamp ring', () => {
    const parts = [
      { name: 'sun', mesh: box([0, 0, 0], [1, 1, 3]) },
      { name: 'ring', mesh: box([5, 0, 0], [6, 1, 3]) },
      { name: 'clamp-ring', mesh: box([6.3, 0, 0], [7, 1, 3]) },
    ];
    expect(firstLayerGap(parts, 0.2, 2)).toMatchObject({ between: ['ring', 'clamp-ring'] });
  });

  it('keeps the gap without bevels: less what both walls stand out', () => {
    const spec = referenceSet({ bevel: { size: 0 }, tolerance: 0.005 });
    const { value, holds, level } = checkOf(spec);
    expect(Math.abs(value! - (0.25 - 2 * 0.15))).toBeLessThan(0.0075);
    expect([holds, level]).toEqual([false, 'should']);
    // Growth was drawn back from every wall, so that it takes nothing more from the first layer.
    const grown = checkOf({ ...spec, printer: { ...spec.printer, growth: 0.05 } });
    expect(Math.abs(grown.value! - value!)).toBeLessThan(0.01);
  });

  it('says what is left on the print, which is smaller than what is drawn', () => {
    const spec = referenceSet({ filament: { shrinkage: 3 }, printer: { growth: 0, firstLayerGrowth: 0.1 } });
    const beside = (distance: number) => [
      { name: 'sun', mesh: box([0, 0, 0], [1, 1, 3]) },
      { name: 'planet-1', mesh: box([1 + distance, 0, 0], [3, 1, 3]) },
    ];
    expect(firstLayer({ spec, parts: beside(0.5) }).value).toBeCloseTo(0.5 * 0.97 - 2 * 0.1, 12);
    expect(firstLayer({ spec, parts: beside(0.205) })).toMatchObject({ holds: false });
    // Half a millimetre of room on the print is looked for: 0.7 mm with what the walls take up.
    expect(firstLayer({ spec, parts: beside(0.69 / 0.97) }).value).toBeCloseTo(0.49, 12);
    expect(firstLayer({ spec, parts: beside(0.71 / 0.97) })).toMatchObject({ value: null, holds: true });
  });

  it('is measured between the parts of a pair and of a rack too', () => {
    for (const other of [{ kind: 'pair', wheel: { teeth: 20 } }, { kind: 'rack' }]) {
      const spec = resolveSpec({
        ...{ module: 1.5, faceWidth: 6, tolerance: 0.005, bevel: { size: 0 }, fit: { gap: 0.2 } },
        ...{ pinion: { teeth: 15 }, ...other },
      });
      const { value, holds } = firstLayer({ spec, parts: buildSet(spec) });
      expect(Math.abs(value! - (0.2 - 2 * 0.15))).toBeLessThan(0.0075);
      expect(holds).toBe(false);
    }
  });

  it('holds with the usual bevels, and with no growth at all', () => {
    expect(checkOf(referenceSet())).toMatchObject({ holds: true, limit: 0, unit: 'mm' });
    expect(checkOf(referenceSet({ bevel: { size: 0 }, printer: { firstLayerGrowth: 0 } })).holds).toBe(true);
  });

  it.each<[string, PlanetarySpec]>([
    ['a small bevel', referenceSet({ bevel: { size: 0.5 } })],
    ['a thin set', setOf(15, 15, 45, 5, { module: 2, faceWidth: 8 })],
    ['fine teeth', setOf(18, 18, 54, 4, { module: 0.8, fit: { gap: 0.15 }, printer: { growth: 0.05 } })],
    ['shrinkage', referenceSet({ bevel: { size: 0.5 }, filament: { shrinkage: 1 } })],
  ])('names values that do pass: %s', (_, spec) => {
    const { holds, says } = checkOf(spec);
    expect(holds).toBe(false);
    const offers = [...says.matchAll(/(bevel\.size|fit\.gap) ([\d.]+)/g)];
    expect(offers.length).toBeGreaterThan(0);
    for (const [, key, value] of offers) {
      const changed =
        key === 'fit.gap'
          ? { ...spec, fit: { ...spec.fit, gap: Number(value) } }
          : { ...spec, bevel: { ...spec.bevel, size: Number(value) } };
      expect(checkOf(resolveSpec(changed)).holds).toBe(true);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchCsv } from '../../lib/batch/csv.js';
import { variantNames } from '../../lib/batch/names.js';
import { withOverrides } from '../../lib/batch/overrides.js';
import { readBatch } from '../../lib/batch/readBatch.js';
import { emptyRow } from '../../lib/batch/record.js';
import { inShard, readShard } from '../../lib/batch/shard.js';
import { expandVariants } from '../../lib/batch/variants.js';
import { Refusal } from '../../lib/refusal.js';
import { isName } from '../../lib/spec/name.js';
import { spinner } from '../spec/table.js';

const all = (variants: object) => {
  const expanded = expandVariants(variants as never);
  return Array.from({ length: expanded.count }, (_, i) => expanded.at(i));
};

describe('variants', () => {
  it('a mapping gives every combination, the last path changing fastest', () => {
    expect(all({ module: [1, 2], 'fit.gap': [0.1, 0.2, 0.3] })).toEqual([
      { module: 1, 'fit.gap': 0.1 },
      { module: 1, 'fit.gap': 0.2 },
      { module: 1, 'fit.gap': 0.3 },
      { module: 2, 'fit.gap': 0.1 },
      { module: 2, 'fit.gap': 0.2 },
      { module: 2, 'fit.gap': 0.3 },
    ]);
  });

  it('a list stands as it is', () => {
    const list = [{ module: 1 }, { 'sun.teeth': 20, module: 2 }];
    expect(all(list)).toEqual(list);
  });
});

describe('overrides', () => {
  it('put values in place and leave the file as it was', () => {
    const file = {
      sun: { teeth: 15, bore: { shape: 'none' } },
      printer: 'fine',
      helix: { form: 'spur', angle: 0 },
    };
    const before = structuredClone(file);
    expect(
      withOverrides(file, {
        'sun.teeth': 20,
        'fit.gap': 0.2,
        'printer.nozzle': 0.6,
        helix: { form: 'helical' },
      }),
    ).toEqual({
      sun: { teeth: 20, bore: { shape: 'none' } },
      fit: { gap: 0.2 },
      printer: { profile: 'fine', nozzle: 0.6 },
      helix: { form: 'helical' },
    });
    expect(file).toEqual(before);
  });

  it('a group and a value in it: the value stays, whichever comes first', () => {
    const file = { helix: { form: 'spur' } };
    const both = { 'helix.angle': 20, helix: { form: 'helical' } };
    expect(withOverrides(file, both)).toEqual({ helix: { form: 'helical', angle: 20 } });
  });
});

describe('names', () => {
  const names = (variants: object, base = 'table-spinner') =>
    variantNames(base, expandVariants(variants as never));

  it('say the values, under the shortest label that tells paths apart', () => {
    expect(names({ module: [1.25], 'fit.gap': [0.2] })).toEqual(['table-spinner_module-1.25_gap-0.2']);
    expect(names({ 'sun.teeth': [15], 'planets.teeth': [12] })).toEqual([
      'table-spinner_sun-teeth-15_planets-teeth-12',
    ]);
    expect(names({ helix: [{ form: 'helical', angle: 20 }] })).toEqual(['table-spinner_helix-helical-20']);
    expect(names([{ name: 'small', module: 1 }, { module: 2 }])).toEqual(['small', 'table-spinner_module-2']);
  });

  it('can stand as file names and differ, whatever the values are', () => {
    const value = fc.oneof(
      fc.double(),
      fc.string(),
      fc.constantFrom('../../x', 'A', 'a', 'İ', 'x'.repeat(300)),
    );
    fc.assert(
      fc.property(
        fc.array(fc.record({ module: value, name: value }, { requiredKeys: ['module'] }), { minLength: 1 }),
        fc.constantFrom('set', 'Übung', '歯'.repeat(60), 'x'.repeat(100)),
        (list, base) => {
          const found = names(list, base);
          for (const name of found) expect(isName(name), name).toBe(true);
          expect(new Set(found.map((name) => name.normalize('NFKC').toLowerCase())).size).toBe(list.length);
          expect(names(list, base)).toEqual(found);
        },
      ),
    );
  });
});

describe('shards', () => {
  it('deal out every variant exactly once, as evenly as can be', () => {
    for (const count of [1, 2, 3, 7]) {
      const sizes = Array.from({ length: count }, (_, i) => {
        const shard = readShard(`${i + 1}/${count}`);
        return Array.from({ length: 20 }, (_, variant) => variant).filter((variant) =>
          inShard(variant, shard),
        );
      });
      expect(sizes.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i));
      expect(Math.max(...sizes.map((s) => s.length)) - Math.min(...sizes.map((s) => s.length))).toBeLessThan(
        2,
      );
    }
  });

  it.each([
    ['0/4', '1/4'],
    ['5/4', '4/4'],
    ['1/0', '1/1'],
    ['two/4', '1/1'],
    ['1/99999', '1/10000'],
  ])('%s is refused with %s, which works', (text, nearest) => {
    expect(() => readShard(text)).toThrowError(
      expect.objectContaining({ parameter: 'shard', nearest: [nearest] }),
    );
    readShard(nearest);
  });
});

describe('reading a batch', () => {
  const problems = (file: object) => {
    try {
      readBatch(file, 'file', {});
      return [];
    } catch (error) {
      if (error instanceof Refusal) return error.problems.map(({ parameter }) => parameter);
      throw error;
    }
  };

  it('lets a variant give what the file leaves out, and leaves the faults of a variant to it', () => {
    const { module: _, ...rest } = spinner();
    expect(problems({ ...rest, variants: { module: [1, 2] } })).toEqual([]);
    expect(problems({ ...spinner(), variants: { module: [-1, 2] } })).toEqual([]);
  });

  it('refuses what no variant mends, unknown paths, and a file without variants', () => {
    expect(problems({ ...spinner(), modul: 2, variants: { 'fit.gap': [0.2] } })).toEqual(['modul']);
    expect(problems({ ...spinner(), variants: { gap: [0.2] } })).toEqual(['variants.gap']);
    expect(problems({ ...spinner(), name: '../x', variants: { 'fit.gap': [0.2] } })).toEqual(['name']);
    expect(problems(spinner())).toEqual(['variants']);
  });
});

describe('the table', () => {
  it('quotes what needs it and lets no text run as a formula', () => {
    const row = { ...emptyRow('a', { module: '=1+1', rack: 'say "B", twice' }), triangles: 3 };
    const [head, line] = [...batchCsv(['module', 'rack'], [row])];
    expect(head.startsWith('name,status,module,rack,size x,')).toBe(true);
    expect(line).toBe(`a,missing,'=1+1,"say ""B"", twice",,,,0,,3,,\r\n`);
    expect(line.replace(/"[^"]*"/g, '').split(',').length).toBe(head.split(',').length);
  });
});

import { expect, it } from 'vitest';
import { planSets } from '../../lib/proof/planSets.js';
import { readSpec } from '../../lib/spec/readSpec.js';
import { planText } from '../../lib/write/planFile.js';

it('a set whose mesh would be too large states a coarser tolerance, and only such a set does', () => {
  const { rows, wanted } = planSets({
    bed: 1000,
    module: 1,
    sunTeeth: 120,
    ringTeeth: { least: 270, most: 330 },
    planets: 4,
    faceWidth: 150,
    limit: 1,
  });
  const text = planText(rows[0], wanted);
  const lines = text.split('\n');
  const stated = lines.filter((line) => line.startsWith('tolerance: '));
  expect(stated).toHaveLength(1);
  expect(readSpec(text).tolerance).toBe(Number(stated[0].split(' ')[1]));
  expect(readSpec(text).tolerance).toBeGreaterThan(0.01);
  const without = lines.filter((line) => !line.startsWith('tolerance: ')).join('\n');
  expect(() => readSpec(without)).toThrow(/^tolerance: 0\.01: /);
  const small = planSets({ module: 1, limit: 1 });
  expect(planText(small.rows[0], small.wanted)).not.toContain('tolerance');
});

it('a bed that is named is as high as the gears that are asked for, and usual otherwise', () => {
  const written = (faceWidth: number) => {
    const { rows, wanted } = planSets({ bed: 230, module: 1, planets: 3, faceWidth, limit: 1 });
    return readSpec(planText(rows[0], wanted)).printer.bed;
  };
  expect(written(20)).toEqual({ width: 230, depth: 230, height: 250 });
  expect(written(280)).toEqual({ width: 230, depth: 230, height: 280 });
});

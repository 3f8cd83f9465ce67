import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dryingCaution, troubles, troublesFor } from '../../lib/fit/troubles.js';
import { specJsonSchema } from '../../lib/spec/jsonSchema.js';
import { filamentProfiles } from '../../lib/spec/profiles/filaments.js';
import { soleProblem } from '../spec/table.js';

describe('troubles', () => {
  it.each([
    ["won't turn", 'wont-turn'],
    ['turns then binds', 'binds'],
    ['strings between teeth', 'strings'],
    ['weak layers', 'weak-layers'],
    ['tips break', 'tips-break'],
    ['skip', 'skips'],
    ['planets tip', 'planets-tip'],
    ['falls apart', 'falls-apart'],
  ])('%s is one of them', (symptom, id) => {
    expect(troublesFor(symptom).map((trouble) => trouble.id)).toContain(id);
  });

  it('offers the nearest for what is none', () => {
    expect(soleProblem('strigns', troublesFor)).toMatchObject({ parameter: 'symptom', nearest: ['strings'] });
    expect(soleProblem('  ', troublesFor)).toMatchObject({ parameter: 'symptom' });
  });

  it('say in every line what is likely and what to change, and point to troubles that are there', () => {
    const ids = troubles.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { symptom, causes } of troubles) {
      expect(symptom).toMatch(/\w+ \w+/);
      expect(causes.length).toBeGreaterThan(0);
      for (const { cause, change } of causes) {
        expect(cause).toMatch(/\w+ \w+/);
        expect(change).toMatch(/\w+/);
        for (const [, id] of change.matchAll(/\bsee ([a-z-]+)/g)) expect(ids).toContain(id);
      }
    }
  });

  it('name no parameter that the parameter file does not have', () => {
    const groups = ['fit', 'printer', 'ring', 'helix', 'bevel', 'planets', 'filament'];
    const named = troubles
      .flatMap(({ causes }) => causes.map(({ change }) => change))
      .flatMap((change) => [...change.matchAll(/\b([a-z]+)\.([a-z]\w+)/gi)])
      .filter(([, group]) => groups.includes(group));
    expect(named.length).toBeGreaterThan(8);
    const schema = JSON.stringify(specJsonSchema());
    for (const [, group, key] of named) {
      expect(schema).toContain(`"${group}":`);
      expect(schema).toContain(`"${key}":`);
    }
  });

  it('keep drying below the temperature at which each filament softens, with cautions', () => {
    for (const { dryingTemperature, glassTransition } of Object.values(filamentProfiles)) {
      expect(dryingTemperature).toBeLessThan(glassTransition);
      expect(dryingCaution).toContain(`${dryingTemperature} °C (softens at ${glassTransition})`);
    }
    const drying = troubles.filter(({ causes }) => causes.some(({ change }) => change.startsWith('dry ')));
    expect(drying.length).toBeGreaterThan(1);
    for (const { caution } of drying) expect(caution).toBe(dryingCaution);
  });
});

describe('the README', () => {
  it('says the likeliest cause of each trouble, and what to change', () => {
    const readme = readFileSync(join(import.meta.dirname, '..', '..', 'README.md'), 'utf8');
    for (const { id, symptom, causes } of troubles)
      expect(readme).toMatch(
        new RegExp([`\`${id}\``, symptom, causes[0].cause, causes[0].change].map(escaped).join(' +\\| ')),
      );
  });
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

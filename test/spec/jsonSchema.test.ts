import { describe, expect, it } from 'vitest';
import { formsOf, type Guide, guideOf, knownPaths } from '../../lib/spec/guide.js';
import { specJsonSchema } from '../../lib/spec/jsonSchema.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { Kind } from '../../lib/spec/types.js';
import { type File, problemsOf, spinner, withValue } from './table.js';

interface Node extends Guide {
  $schema?: string;
  description?: string;
  source?: string;
  defaultRule?: string;
  properties?: Record<string, Node>;
}

const whole = specJsonSchema() as unknown as Node;

function* leaves(node: Node, path: string[] = []): Generator<[string, Node, boolean]> {
  for (const [key, below] of Object.entries(node.properties ?? {})) {
    const at = [...path, key];
    // Printer and filament are a name or a group of parameters; a rack or a bore is one parameter of several forms.
    const groups = below.properties || grouped.includes(key) ? (formsOf(below) as Node[]) : [];
    const group = groups.find(({ properties }) => properties);
    if (group) yield* leaves(group, at);
    else yield [at.join('.'), below, node.required?.includes(key) ?? false];
  }
}
const profiled = ['printer', 'filament'];
/** Parameters that are groups of one kind or another. */
const grouped = [...profiled, 'wheel', 'gear'];

/** The least file of each kind, and what it must state beside the module. */
const least: Record<Kind, [() => File, string[]]> = {
  planetary: [spinner, ['faceWidth', 'kind', 'sun', 'planets']],
  pair: [
    () => ({ kind: 'pair', module: 1.5, faceWidth: 20, pinion: { teeth: 15 }, wheel: { teeth: 40 } }),
    ['faceWidth', 'kind', 'pinion', 'wheel'],
  ],
  rack: [
    () => ({ kind: 'rack', module: 1.5, faceWidth: 20, pinion: { teeth: 15 } }),
    ['faceWidth', 'kind', 'pinion'],
  ],
  gear: [
    () => ({ kind: 'gear', module: 1.5, faceWidth: 20, gear: { teeth: 15 } }),
    ['faceWidth', 'kind', 'gear'],
  ],
};

describe.each(Object.keys(least) as Kind[])('the JSON Schema of %s', (kind) => {
  const schema = guideOf(kind) as Node;
  const [file, required] = least[kind];
  const parameters = [...leaves(schema)];

  it('names every key of a resolved file', () => {
    const known = new Set(knownPaths(schema));
    const check = (object: object, prefix: string) => {
      for (const [key, value] of Object.entries(object)) {
        expect(known).toContain(prefix + key);
        if (typeof value === 'object') check(value, `${prefix}${key}.`);
      }
    };
    check(resolveSpec(file()), '');
    expect(parameters.length).toBeGreaterThan(kind === 'planetary' ? 55 : 40);
  });

  it.each(parameters)(
    '%s has a description, a source, and a default unless it is required',
    (path, node, required) => {
      expect(node.description).toMatch(/\w/);
      expect(node.source).toMatch(/\w/);
      const optional = ['module', 'transverseModule', 'variants', 'bar'];
      if (!required && !optional.includes(path)) expect(node.default ?? node.defaultRule).toBeDefined();
    },
  );

  it.each(parameters.filter(([, node]) => node.default !== undefined))(
    '%s resolves to its default',
    (path, node) => {
      const value = path.split('.').reduce((group: File, key) => group[key], resolveSpec(file()));
      if (path === 'rack') expect(value).toEqual(resolveSpec(withValue('rack', node.default, file())).rack);
      else expect(value).toEqual(node.default);
    },
  );

  it.each(parameters.filter(([, node]) => node.minimum !== undefined))(
    '%s is refused beyond its range',
    (path, node) => {
      for (const value of [
        node.minimum! - 0.001,
        node.maximum! + 0.001,
        node.minimum! - 1,
        node.maximum! + 1,
      ]) {
        const problem = problemsOf(withValue(path, value, file())).find(
          ({ parameter }) => parameter === path,
        );
        expect(problem?.value).toBe(value);
      }
    },
  );

  it.each(profiled)('%s is a shipped name or a mapping, and says which names', (key) => {
    const [names, group] = formsOf(schema.properties![key]);
    expect(names.enum!.length).toBeGreaterThan(2);
    expect(Object.keys(group.properties!)).toContain(key === 'printer' ? 'profile' : 'material');
    for (const name of names.enum!) expect(problemsOf(withValue(key, name, file()))).toEqual([]);
  });

  it('takes the file’s own two least forms and no extra keys', () => {
    expect(schema).toMatchObject({
      type: 'object',
      required,
      additionalProperties: false,
      oneOf: [{ required: ['module'] }, { required: ['transverseModule'] }],
    });
    resolveSpec(file());
  });
});

it('the JSON Schema is one of the kinds, told apart by `kind`', () => {
  expect(whole.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  expect(formsOf(whole).map((form) => form.properties!.kind.const)).toEqual(Object.keys(least));
});

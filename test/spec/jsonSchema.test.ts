import { describe, expect, it } from 'vitest';
import { formsOf, type Guide, knownPaths } from '../../lib/spec/guide.js';
import { specJsonSchema } from '../../lib/spec/jsonSchema.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { type File, problemsOf, spinner, withValue } from './table.js';

interface Node extends Guide {
  description?: string;
  source?: string;
  defaultRule?: string;
  properties?: Record<string, Node>;
}

const schema = specJsonSchema() as unknown as Node;

function* leaves(node: Node, path: string[] = []): Generator<[string, Node, boolean]> {
  for (const [key, below] of Object.entries(node.properties ?? {})) {
    const at = [...path, key];
    // Printer and filament are a name or a group of parameters; a rack or a bore is one parameter of several forms.
    const groups = below.properties || profiled.includes(key) ? (formsOf(below) as Node[]) : [];
    const group = groups.find(({ properties }) => properties);
    if (group) yield* leaves(group, at);
    else yield [at.join('.'), below, node.required?.includes(key) ?? false];
  }
}
const profiled = ['printer', 'filament'];
const parameters = [...leaves(schema)];

describe('the JSON Schema', () => {
  it('names every key of a resolved file', () => {
    const known = new Set(knownPaths());
    const check = (object: object, prefix: string) => {
      for (const [key, value] of Object.entries(object)) {
        expect(known).toContain(prefix + key);
        if (typeof value === 'object') check(value, `${prefix}${key}.`);
      }
    };
    check(resolveSpec(spinner()), '');
    expect(parameters.length).toBeGreaterThan(55);
  });

  it.each(parameters)(
    '%s has a description, a source, and a default unless it is required',
    (path, node, required) => {
      expect(node.description).toMatch(/\w/);
      expect(node.source).toMatch(/\w/);
      const optional = ['module', 'transverseModule', 'variants'];
      if (!required && !optional.includes(path)) expect(node.default ?? node.defaultRule).toBeDefined();
    },
  );

  it.each(parameters.filter(([, node]) => node.default !== undefined))(
    '%s resolves to its default',
    (path, node) => {
      const value = path.split('.').reduce((group: File, key) => group[key], resolveSpec(spinner()));
      if (path === 'rack') expect(value).toEqual(resolveSpec(withValue('rack', node.default)).rack);
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
        const problem = problemsOf(withValue(path, value)).find(({ parameter }) => parameter === path);
        expect(problem?.value).toBe(value);
      }
    },
  );

  it.each(profiled)('%s is a shipped name or a mapping, and says which names', (key) => {
    const [names, group] = formsOf(schema.properties![key]);
    expect(names.enum!.length).toBeGreaterThan(2);
    expect(Object.keys(group.properties!)).toContain(key === 'printer' ? 'profile' : 'material');
    for (const name of names.enum!) expect(problemsOf(withValue(key, name))).toEqual([]);
  });

  it('takes the file’s own two least forms and no extra keys', () => {
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      required: ['kind', 'faceWidth', 'sun', 'planets'],
      additionalProperties: false,
      oneOf: [{ required: ['module'] }, { required: ['transverseModule'] }],
    });
  });
});

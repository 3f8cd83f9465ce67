// Random parameter files, from plausible sets to junk. Numbered: file `index` of a seed is always the same one.

import { specJsonSchema } from 'cogweave';
import fc from 'fast-check';
import { number, rarely, whole } from './arbitraries.mjs';
import { planetary } from './setFiles.mjs';
import { gear, pair, rack } from './trainFiles.mjs';

/** Files that somebody could ask for. */
const plausible = fc.oneof(
  { arbitrary: planetary, weight: 14 },
  { arbitrary: pair, weight: 5 },
  { arbitrary: rack, weight: 2 },
  { arbitrary: gear, weight: 1 },
);

/** Numbers at the ends of what doubles hold, and what is no number. */
const strange = fc.oneof(
  fc.constantFrom(0, -0, 5e-324, 2.2250738585072014e-308, 1.7976931348623157e308, -1.7976931348623157e308),
  fc.constantFrom(
    Number.POSITIVE_INFINITY,
    Number.NaN,
    Number.MAX_SAFE_INTEGER,
    2 ** 53,
    1e21,
    1e-7,
    0.1 + 0.2,
  ),
  fc.constantFrom(null, true, '', '1,5', '20 mm', 'solve', '__proto__', '../x', [], {}, [1], { teeth: 1 }),
  fc.double(),
  fc.string(),
);

/** Any value that the schema allows for a parameter, its limits often, and now and then one beyond them. */
function bySchema(node) {
  const forms = node.properties ? undefined : (node.anyOf ?? node.oneOf);
  if (forms) return fc.oneof(...forms.map(bySchema));
  if (node.const !== undefined) return fc.constant(node.const);
  if (node.enum) return fc.constantFrom(...node.enum);
  if (node.properties) return groupOf(node);
  const { type, minimum: least, maximum: most } = node;
  if ((type === 'number' || type === 'integer') && least !== undefined && most !== undefined) {
    const inside = type === 'integer' ? whole(least, most) : number(least, most, 4);
    const usual = node.default ?? node.examples?.[0] ?? least;
    return fc.oneof(
      { arbitrary: fc.constant(usual), weight: 4 },
      { arbitrary: inside, weight: 3 },
      { arbitrary: fc.constantFrom(least, most), weight: 2 },
      { arbitrary: fc.constantFrom(least - 1, most + 1, least / 2, most * (1 + 2 ** -52)), weight: 1 },
    );
  }
  if (type === 'string') return fc.constantFrom('set', 'exhibit table', 'Übung-3', 'x'.repeat(100));
  return fc.constant(undefined);
}

function groupOf({ properties, required = [] }) {
  const entries = Object.entries(properties).filter(([key]) => key !== 'variants');
  return fc.record(
    Object.fromEntries(
      entries.map(([key, below]) => [
        key,
        required.includes(key) ? bySchema(below) : rarely(bySchema(below)),
      ]),
    ),
  );
}

const anySchema = bySchema(specJsonSchema()).map((file) =>
  file?.module === undefined && file?.transverseModule === undefined ? { ...file, module: 1.5 } : file,
);

const paths = (node, prefix = []) =>
  (node.properties ? [node] : (node.anyOf ?? node.oneOf ?? []))
    .flatMap((form) => Object.entries(form.properties ?? {}))
    .flatMap(([key, below]) => [[...prefix, key], ...paths(below, [...prefix, key])]);
const known = paths(specJsonSchema()).filter(([first]) => first !== 'variants');

/** A plausible file with a few values replaced by strange ones. */
const spoilt = fc
  .tuple(
    plausible,
    fc.array(
      fc.tuple(
        fc.oneof(
          { arbitrary: fc.constantFrom(...known), weight: 5 },
          { arbitrary: fc.stringMatching(/^[a-zA-Z_]{1,12}$/).map((key) => [key]), weight: 1 },
        ),
        strange,
      ),
      { minLength: 1, maxLength: 3 },
    ),
  )
  .map(([file, changes]) => changes.reduce((spec, [path, value]) => changed(spec, path, value), file));

function changed(group, [key, ...rest], value) {
  const base = typeof group === 'object' && group !== null && !Array.isArray(group) ? group : {};
  const below = Object.hasOwn(base, key) ? base[key] : undefined;
  return { ...base, [key]: rest.length ? changed(below, rest, value) : value };
}

const file = fc.oneof(
  { arbitrary: fc.noBias(plausible), weight: 6 },
  { arbitrary: anySchema, weight: 2 },
  { arbitrary: spoilt, weight: 2 },
);

/** Whether a file has a carrier, lips, or shifts that are to be found. */
export function isInvolved(file) {
  const { carrier, lips, retention, profileShift } = file ?? {};
  const carried = typeof carrier === 'object' && carrier !== null;
  const lipped = typeof lips === 'object' || retention === 'lips' || retention === 'both';
  return carried || lipped || profileShift === 'solve';
}

/** File `index` of a seed, as plain data. */
export function parameterFile(seed, index) {
  // Neighbouring seeds of the generator look alike in their first values, so they are spread.
  const mixed = Math.imul((seed ^ 0x9e3779b9) + Math.imul(index, 0x85ebca6b), 0xc2b2ae35) | 0;
  const [data] = fc.sample(file, { seed: mixed, numRuns: 1 });
  return data;
}

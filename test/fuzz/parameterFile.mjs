// Random parameter files, from plausible sets to junk. Numbered: file `index` of a seed is always the same one.

import { specJsonSchema } from 'cogweave';
import fc from 'fast-check';
import { bore, common, number, option, rarely, whole } from './arbitraries.mjs';
import { gear, pair, rack } from './trainFiles.mjs';

/** Sets that somebody could ask for. */
const planetary = fc
  .record({
    sun: whole(6, 24),
    planet: whole(6, 20),
    count: whole(2, 8),
    extraRing: fc.oneof(
      { arbitrary: fc.constant(undefined), weight: 3 },
      { arbitrary: whole(-3, 3), weight: 2 },
    ),
    fits: fc.boolean(),
    rest: fc.record({
      ...common,
      profileShift: option(fc.constantFrom('none', 'solve')),
      shiftBalance: rarely(fc.constantFrom('sliding', 'root', 'none')),
      opening: rarely(fc.record({ max: number(0, 12, 1), edge: option(number(0, 60, 0)) })),
    }),
    sunShift: rarely(number(-0.6, 0.9, 2)),
    planetShift: rarely(number(-0.6, 0.9, 2)),
    bore: rarely(bore),
    spacing: rarely(fc.constant('nearest')),
  })
  .map(({ sun, planet, count, extraRing, fits, rest, sunShift, planetShift, bore: hole, spacing }) => {
    // Half of the files get a number of planets that assembles, or few would come as far as their teeth.
    const ring = sun + 2 * planet + (extraRing ?? 0);
    const divides = [8, 7, 6, 5, 4, 3, 2].filter(
      (n) => (sun + ring) % n === 0 && (sun + planet) * Math.sin(Math.PI / n) > planet + 3,
    );
    return {
      kind: 'planetary',
      ...rest,
      sun: { teeth: sun, profileShift: sunShift, bore: hole },
      planets: {
        teeth: planet,
        count: fits && divides.length ? divides[count % divides.length] : count,
        profileShift: planetShift,
        spacing,
      },
      ring: extraRing === undefined ? undefined : { teeth: ring },
    };
  });

/** Files that somebody could ask for. */
const plausible = fc.oneof(
  { arbitrary: planetary, weight: 10 },
  { arbitrary: pair, weight: 5 },
  { arbitrary: rack, weight: 3 },
  { arbitrary: gear, weight: 2 },
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

/** File `index` of a seed, as plain data. */
export function parameterFile(seed, index) {
  // Neighbouring seeds of the generator look alike in their first values, so they are spread.
  const mixed = Math.imul((seed ^ 0x9e3779b9) + Math.imul(index, 0x85ebca6b), 0xc2b2ae35) | 0;
  const [data] = fc.sample(file, { seed: mixed, numRuns: 1 });
  return data;
}

// Random parameter files, from plausible sets to junk. Numbered: file `index` of a seed is always the same one.

import { specJsonSchema } from 'cogweave';
import fc from 'fast-check';

const number = (min, max, digits = 3) =>
  fc.double({ min, max, noNaN: true }).map((value) => Number(value.toFixed(digits)));
const whole = (min, max) => fc.integer({ min, max });
const option = (arbitrary) => fc.option(arbitrary, { nil: undefined, freq: 2 });
const rarely = (arbitrary) => fc.option(arbitrary, { nil: undefined, freq: 1 });

const bore = fc.oneof(
  fc.constant('none'),
  fc.record({ shape: fc.constant('round'), diameter: number(0.5, 12) }),
  fc.record({ shape: fc.constantFrom('hexagon', 'square'), acrossFlats: number(0.5, 12) }),
  fc.record({ shape: fc.constant('D'), diameter: number(0.5, 12), acrossFlat: number(0.25, 12) }),
);

/** Sets that somebody could ask for; small and coarse, so that many can be made. */
const plausible = fc
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
      module: number(0.5, 3, 2),
      pressureAngle: option(fc.oneof(fc.constant(20), number(14, 30, 1))),
      rack: option(
        fc.oneof(
          fc.constantFrom('A', 'B', 'C', 'D'),
          fc.record({
            addendum: number(0.5, 1.5, 2),
            dedendum: number(0.5, 2, 2),
            fillet: number(0, 0.5, 2),
          }),
        ),
      ),
      helix: option(
        fc.oneof(
          fc.constant({ form: 'spur' }),
          fc.record({
            form: fc.constantFrom('helical', 'herringbone'),
            angle: number(1, 45, 1),
            hand: fc.constantFrom('left', 'right'),
          }),
        ),
      ),
      faceWidth: number(1.5, 6, 1),
      bevel: rarely(fc.record({ size: number(0, 1, 2), angle: option(number(30, 60, 0)) })),
      profileShift: option(fc.constantFrom('none', 'solve')),
      shiftBalance: rarely(fc.constantFrom('sliding', 'root', 'none')),
      fit: option(
        fc.record({ gap: number(0.05, 0.6, 2), gapShare: option(fc.constantFrom(0, 0.5, 1, 0.3)) }),
      ),
      printer: rarely(
        fc.record({
          nozzle: option(fc.constantFrom(0.2, 0.4, 0.6)),
          growth: option(number(-0.1, 0.15, 3)),
          bed: rarely(fc.record({ width: number(20, 300, 0), depth: number(20, 300, 0) })),
        }),
      ),
      filament: rarely(fc.record({ shrinkage: number(0, 2, 2) })),
      opening: rarely(fc.record({ max: number(0, 12, 1), edge: option(number(0, 60, 0)) })),
      tolerance: fc.constantFrom(0.03, 0.05, 0.1),
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

/** A plausible set with a few values replaced by strange ones. */
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

// Planetary sets that somebody could ask for, most of them with a carrier, lips or shifts that are to be found.
import fc from 'fast-check';
import { bore, common, number, option, rarely, whole } from './arbitraries.mjs';

const bolt = fc.constantFrom('M2', 'M2.5', 'M3', 'M4');
const text = fc.record(
  {
    content: fc.constantFrom('A', '{teeth}', 'exhibit'),
    size: number(2, 8, 1),
    style: fc.constantFrom('raised', 'sunk'),
  },
  { requiredKeys: ['content', 'size'] },
);

/** At most one of several features: two of them seldom go together. */
const one = (features, without) =>
  fc.oneof(
    { arbitrary: fc.constant({}), weight: without },
    ...Object.entries(features).map(([key, value]) => ({
      arbitrary: value.map((each) => ({ [key]: each })),
      weight: 1,
    })),
  );

const onSun = one(
  {
    bore,
    screw: fc.record({ size: fc.constantFrom('M2', 'M3') }),
    nut: fc.record({ size: fc.constantFrom('M2', 'M3'), at: fc.constantFrom('bottom', 'top') }),
    knob: fc.record({ diameter: number(6, 20, 1), height: number(4, 12, 1) }),
    crank: fc.record({ acrossFlats: number(3, 8, 1), depth: number(1, 4, 1) }),
    text,
  },
  8,
);
const onPlanets = one(
  {
    hole: fc.record({ diameter: number(1, 12, 1) }),
    dimple: fc.record({ diameter: number(2, 12, 1), depth: number(0.3, 2, 1) }),
    pocket: fc.record({ diameter: number(2, 12, 1), depth: number(0.5, 3, 1) }),
    text,
  },
  8,
);
/** Sizes are shares of the wall, from the root circle (0) to the outer edge (1). */
const onRing = one(
  {
    bolts: fc.record({ share: number(-0.2, 1.2, 2), count: whole(2, 12), size: bolt }),
    flange: fc.record({
      beyond: number(0, 12, 1),
      thickness: number(0.4, 4, 1),
      at: fc.constantFrom('bottom', 'top'),
    }),
    grip: fc.record({ count: whole(6, 40), depth: number(0.2, 2, 1) }),
    mount: fc.record({
      beyond: number(0.5, 3, 1),
      panel: number(2, 12, 0),
      screw: bolt,
      screws: whole(2, 8),
    }),
    text,
  },
  5,
);

const boss = fc.oneof(
  fc.record({ shape: fc.constant('round'), diameter: number(2, 20, 1), height: number(1, 8, 1) }),
  fc.record({
    shape: fc.constantFrom('hexagon', 'square'),
    acrossFlats: number(2, 20, 1),
    height: number(1, 8, 1),
  }),
  fc.record({
    shape: fc.constant('D'),
    diameter: number(4, 20, 1),
    acrossFlat: number(2, 18, 1),
    height: number(1, 8, 1),
  }),
);
const pin = fc.record(
  {
    form: fc.constantFrom('straight', 'waisted', 'barrelled'),
    diameter: number(1, 14, 1),
    depth: number(0, 2, 1),
  },
  { requiredKeys: ['form'] },
);
const carrier = fc
  .record(
    {
      form: fc.constantFrom('pins', 'cage'),
      plates: fc.constantFrom('above', 'below', 'both'),
      thickness: fc.constantFrom(0.4, 1, 2),
      gap: number(0.05, 0.8, 2),
      axialGap: whole(1, 4),
      centre: fc.constantFrom('open', 'closed'),
      pin,
      boss,
      bolts: fc.record(
        { diameter: number(0.8, 6, 1), count: whole(2, 9), circle: number(8, 60, 0) },
        { requiredKeys: ['diameter'] },
      ),
    },
    { requiredKeys: ['form', 'plates'] },
  )
  .map(({ boss: standing, pin: turning, ...rest }) => ({
    ...rest,
    // What only some carriers have is left to them now and then only, or few would come as far as their teeth.
    ...(rest.plates === 'below' ? {} : { boss: standing }),
    ...(rest.form === 'cage' ? {} : { pin: turning }),
  }));
const lips = fc.record(
  { on: fc.constantFrom('ring', 'sun', 'both'), gap: number(0.05, 0.8, 2), reach: number(0.1, 2, 1) },
  { requiredKeys: [] },
);

/** How many planets assemble, and clear each other. */
function countsFor(sun, planet, ring) {
  return [8, 7, 6, 5, 4, 3, 2].filter(
    (n) => (sun + ring) % n === 0 && (sun + planet) * Math.sin(Math.PI / n) > planet + 3,
  );
}

/** A ring's features in mm, beside teeth without shift. */
function placed({ bolts, flange, mount, ...rest }, { module, helix, rim }, teeth) {
  // Without a helix in the file teeth are herringbones at 30°.
  const lean = helix ? (helix.angle ?? 0) : 30;
  const root = (module * teeth) / 2 / Math.cos((lean * Math.PI) / 180) + 1.25 * module;
  const outer = root + (rim ?? Math.max(3, 2.7 * module));
  const mm = (size) => Number(size.toFixed(1));
  if (bolts) {
    const { share, ...others } = bolts;
    return { ...rest, bolts: { ...others, circle: mm(2 * (root + share * (outer - root))) } };
  }
  if (flange) {
    const { beyond, ...others } = flange;
    return { ...rest, flange: { ...others, diameter: mm(2 * (outer + beyond)) } };
  }
  if (!mount) return rest;
  const { beyond, ...others } = mount;
  return { ...rest, mount: { ...others, hole: mm(2 * (outer + beyond)) } };
}

export const planetary = fc
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
      tolerance: fc.constantFrom(0.01, 0.03, 0.05, 0.1, 0.2),
      profileShift: option(fc.constantFrom('none', 'solve', 'solve')),
      shiftBalance: rarely(fc.constantFrom('sliding', 'root', 'none')),
      opening: rarely(fc.record({ max: number(0, 12, 1), edge: option(number(0, 60, 0)) })),
      carrier: option(carrier),
      retention: fc.oneof(
        { arbitrary: fc.constant(undefined), weight: 3 },
        { arbitrary: fc.constantFrom('none', 'lips'), weight: 1 },
      ),
      lips: fc.oneof({ arbitrary: fc.constant(undefined), weight: 5 }, { arbitrary: lips, weight: 1 }),
    }),
    sunShift: rarely(number(-0.6, 0.9, 2)),
    planetShift: rarely(number(-0.6, 0.9, 2)),
    rim: rarely(number(0.5, 8, 1)),
    spacing: rarely(fc.constant('nearest')),
    features: fc.record({ sun: onSun, planets: onPlanets, ring: onRing }),
  })
  .map(({ sun, planet, count, extraRing, fits, rest, sunShift, planetShift, rim, spacing, features }) => {
    // Half of the files get a number of planets that assembles, or few would come as far as their teeth.
    const ring = sun + 2 * planet + (extraRing ?? 0);
    const divides = countsFor(sun, planet, ring);
    const { profileShift, ...others } = rest;
    return {
      kind: 'planetary',
      ...others,
      // Teeth off the usual count run with shifts alone.
      profileShift: extraRing && fits ? 'solve' : profileShift,
      sun: { teeth: sun, profileShift: sunShift, ...features.sun },
      planets: {
        teeth: planet,
        count: fits && divides.length ? divides[count % divides.length] : count,
        profileShift: planetShift,
        spacing,
        ...features.planets,
      },
      ring: {
        ...(extraRing === undefined ? {} : { teeth: ring }),
        rim,
        ...placed(features.ring, { ...rest, rim }, ring),
      },
    };
  });

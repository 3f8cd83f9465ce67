// Pairs, racks and single gears that somebody could ask for.
import fc from 'fast-check';
import { bore, common, number, option, rarely, whole } from './arbitraries.mjs';

const shift = rarely(number(-0.6, 0.9, 2));
const thickness = rarely(number(0.4, 8, 1));

const features = {
  screw: rarely(fc.record({ size: fc.constantFrom('M2', 'M3', 'M5') })),
  nut: rarely(fc.record({ size: fc.constantFrom('M2', 'M3'), at: fc.constantFrom('bottom', 'top') })),
  knob: rarely(fc.record({ diameter: number(6, 20, 1), height: number(4, 12, 1) })),
  crank: rarely(
    fc.record({ acrossFlats: number(3, 8, 1), depth: number(1, 5, 1), handle: rarely(number(15, 60, 0)) }),
  ),
};

/** One feature at the most: several seldom go together. */
const feature = fc.oneof(
  { arbitrary: fc.constant({}), weight: 8 },
  ...Object.entries(features).map(([key, value]) => ({
    arbitrary: value.map((each) => ({ [key]: each })),
    weight: 1,
  })),
);

const external = (least, most) =>
  fc
    .record({ teeth: whole(least, most), profileShift: shift, bore: rarely(bore), feature })
    .map(({ feature: one, ...gear }) => ({ ...gear, ...one }));

const internal = (least, most) =>
  fc.record({
    internal: fc.constant(true),
    teeth: whole(least, most),
    profileShift: shift,
    rim: thickness,
    grip: rarely(fc.record({ count: whole(6, 40), depth: number(0.2, 2, 1) })),
  });

/** A wheel beside or around its pinion, often with a centre distance near the one without shift. */
export const pair = fc
  .record({
    file: fc.record({
      ...common,
      profileShift: option(fc.constantFrom('none', 'solve')),
      shiftBalance: rarely(fc.constantFrom('sliding', 'none')),
      pinion: external(5, 26),
    }),
    wheel: fc.oneof({ arbitrary: external(6, 50), weight: 3 }, { arbitrary: internal(2, 40), weight: 2 }),
    apart: rarely(number(-0.8, 1.5, 2)),
    exactly: fc.boolean(),
  })
  .map(({ file, wheel, apart, exactly }) => {
    // Teeth of a ring are counted from its pinion's, or many would be too few.
    const teeth = wheel.internal ? wheel.teeth + file.pinion.teeth : wheel.teeth;
    const sum = wheel.internal ? teeth - file.pinion.teeth : teeth + file.pinion.teeth;
    // Without a helix in the file teeth are herringbones at 30°.
    const lean = Math.cos(((file.helix ? (file.helix.angle ?? 0) : 30) * Math.PI) / 180);
    const distance = file.module * (sum / 2 / lean + (exactly ? 0 : (apart ?? 0)));
    const centreDistance =
      apart === undefined ? undefined : Math.max(0.5, Number(distance.toFixed(exactly ? 4 : 2)));
    return { kind: 'pair', ...file, centreDistance, wheel: { ...wheel, teeth } };
  });

/** A pinion and a bar. */
export const rack = fc.record({
  kind: fc.constant('rack'),
  ...common,
  pinion: external(5, 26),
  bar: option(
    fc.record({ teeth: option(whole(1, 16)), length: rarely(number(5, 120, 1)), backing: thickness }),
  ),
});

/** One gear, with teeth outside or inside. */
export const gear = fc.record({
  kind: fc.constant('gear'),
  ...common,
  gear: fc.oneof(
    external(5, 40),
    fc.tuple(internal(10, 60), rarely(whole(5, 40))).map(([ring, mateTeeth]) => ({ ...ring, mateTeeth })),
  ),
});

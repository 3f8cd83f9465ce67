// Values that files of every kind are drawn from.
import fc from 'fast-check';

/** Everywhere alike: `fc.double` draws every double alike, so hardly anything but 0 from a range that holds it. */
export const number = (min, max, digits = 3) =>
  fc
    .integer({ min: 0, max: 1_000_000 })
    .map((share) => Number((min + ((max - min) * share) / 1_000_000).toFixed(digits)));
export const whole = (min, max) => fc.integer({ min, max });
/** Given by as many files in a hundred. */
const given = (share) => (arbitrary) =>
  fc.oneof({ arbitrary: fc.constant(undefined), weight: 100 - share }, { arbitrary, weight: share });
export const option = given(50);
export const rarely = given(15);

export const bore = fc.oneof(
  fc.constant('none'),
  fc.record({ shape: fc.constant('round'), diameter: number(0.5, 12) }),
  fc.record({ shape: fc.constantFrom('hexagon', 'square'), acrossFlats: number(0.5, 12) }),
  fc.record({ shape: fc.constant('D'), diameter: number(0.5, 12), acrossFlat: number(0.25, 12) }),
);

/** What plausible files of every kind hold; small and coarse, so that many can be made. */
export const common = {
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
  fit: option(fc.record({ gap: number(0.05, 0.6, 2), gapShare: option(fc.constantFrom(0, 0.5, 1, 0.3)) })),
  printer: rarely(
    fc.record({
      nozzle: option(fc.constantFrom(0.2, 0.4, 0.6)),
      growth: option(number(-0.1, 0.15, 3)),
      bed: rarely(fc.record({ width: number(20, 300, 0), depth: number(20, 300, 0) })),
    }),
  ),
  filament: rarely(fc.record({ shrinkage: number(0, 2, 2) })),
  // Most gaps are six times as wide or more; where one is not, the file is refused with what would do.
  tolerance: fc.constantFrom(0.01, 0.03, 0.05, 0.1),
};

import { expect, it } from 'vitest';
import { printTime } from '../../../lib/proof/coupon/printTime.js';
import { rackOf } from '../../trains.js';
import { box } from '../mesh/fixtures.js';

// What the sentence promises, worked out by hand: shells of two lines under the whole surface, a fifth of what is inside
// them, at 60 mm/s, and 15 % on top. Common practice, no source.
it('the time to print a cube and a thin plate', () => {
  const spec = rackOf(20, 8, { printer: { lineWidth: 0.5, layer: 0.2 } });
  const cube = { name: 'cube', mesh: box([0, 0, 0], [20, 20, 20]) };
  const plate = { name: 'plate', mesh: box([0, 0, 0], [30, 10, 1]) };
  // 8000 mm³ under 2400 mm² of surface: 2400 of shell, a fifth of 5600 inside.
  const made = printTime([cube], spec);
  expect(made.volume).toBeCloseTo(8000, 9);
  expect(made.extruded).toBeCloseTo(2400 + 1120, 9);
  expect(made.flow).toBeCloseTo(6, 12);
  expect(made.minutes).toBeCloseTo((1.15 * 3520) / 6 / 60, 9);
  expect(made.how).toMatch(/^3\.5 cm³ extruded \(shells of 2 lines, 20 % infill\).*6\.0 mm³\/s, 15 % added/);
  // A plate thinner than its two shells is solid.
  expect(printTime([plate], spec).extruded).toBeCloseTo(300, 9);
  expect(printTime([cube, plate], spec).minutes).toBeCloseTo((1.15 * 3820) / 6 / 60, 9);
});

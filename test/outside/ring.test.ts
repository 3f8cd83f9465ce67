import { describe, expect, it } from 'vitest';
import { spreadRing } from '../../lib/fit/ring/equalLoads.js';
import { type RingSize, ringSection } from '../../lib/fit/ring/section.js';
import { wallStress } from '../../lib/fit/ring/stress.js';
import { squeezedRing } from '../../lib/fit/ring/twoLoads.js';
import { energyRing } from './energyRing.js';
import { radialMovement } from './michellRing.js';

/** So thin that hoop force and shear change nothing that counts: α is depth² / (12 R²). */
const thin = ringSection({ meanRadius: 100, depth: 0.05, width: 10, modulus: 3000 });
/** W R³ / (E I) of the thin ring for W = 1 N, I by b h³ / 12. */
const unit = 100 ** 3 / (3000 * ((10 * 0.05 ** 3) / 12));

describe('coefficients of thin rings, Roark, circular rings, and Timoshenko (from memory, recomputed)', () => {
  it('case 1, two opposite forces', () => {
    const { loadedDiameter, otherDiameter, momentUnderLoad, momentMidway } = squeezedRing(thin, 1);
    expect(loadedDiameter / unit).toBeCloseTo(Math.PI / 4 - 2 / Math.PI, 6);
    expect(otherDiameter / unit).toBeCloseTo(2 / Math.PI - 1 / 2, 6);
    expect(momentUnderLoad / 100).toBeCloseTo(1 / Math.PI, 6);
    expect(momentMidway / 100).toBeCloseTo(1 / 2 - 1 / Math.PI, 6);
  });

  it.each([
    [3, 0.015939, 0.014257, 0.18879, 0.099885],
    [4, 0.006079, 0.005386, 0.13662, 0.070487],
    [5, 0.002976, 0.002625, 0.107584, 0.054876],
    [6, 0.001682, 0.00148, 0.088904, 0.04507],
  ])('case 7, %d equal forces', (count, outward, inward, underLoad, midway) => {
    const found = spreadRing(thin, count, 1);
    expect(found.outwardUnderLoad / unit).toBeCloseTo(outward, 6);
    expect(found.inwardMidway / unit).toBeCloseTo(inward, 6);
    expect(found.momentUnderLoad / 100).toBeCloseTo(underLoad, 6);
    expect(found.momentMidway / 100).toBeCloseTo(midway, 6);
  });

  it('a printed ring worked by hand with the thin formulas: 10 N on R 32.5, 20 × 5 mm, 3500 MPa', () => {
    // 0.07004 mm, 103.45 N mm, 1.2414 MPa (derived); a wall of 15 % of the radius is a few percent off thin.
    const found = squeezedRing(
      ringSection({ meanRadius: 32.5, depth: 5, width: 20, modulus: 3500, poisson: 0.36 }),
      10,
    );
    expect(Math.abs(found.loadedDiameter / 0.07004 - 1)).toBeLessThan(0.05);
    expect(Math.abs(found.momentUnderLoad / 103.45 - 1)).toBeLessThan(0.005);
    expect(Math.abs(found.stress / 1.2414 - 1)).toBeLessThan(0.06);
  });
});

const walls: [string, RingSize][] = [
  ['thin', { meanRadius: 40, depth: 1, width: 20, modulus: 2000, poisson: 0.36 }],
  ['printed rim', { meanRadius: 40, depth: 5, width: 20, modulus: 2000, poisson: 0.36 }],
  ['thick', { meanRadius: 40, depth: 20, width: 20, modulus: 2000, poisson: 0.3 }],
];

describe("Castigliano's theorem on strain energy integrated fibre by fibre, without Roark's factors", () => {
  it.each(walls)('%s wall, squeezed', (_, size) => {
    const found = squeezedRing(ringSection(size), 10);
    const half = energyRing(size, 2, -10);
    expect(found.loadedDiameter / (-2 * half.underLoad)).toBeCloseTo(1, 5);
    expect(found.otherDiameter / (2 * half.midway)).toBeCloseTo(1, 5);
    expect(found.momentUnderLoad / half.momentUnderLoad).toBeCloseTo(1, 5);
    expect(found.momentMidway / -half.momentMidway).toBeCloseTo(1, 5);
  });

  it.each(walls.flatMap(([name, size]) => [2, 3, 5, 8].map((count) => [name, count, size] as const)))(
    '%s wall, %d forces',
    (_, count, size) => {
      const found = spreadRing(ringSection(size), count, 10);
      const other = energyRing(size, count, 10);
      expect(found.outwardUnderLoad / other.underLoad).toBeCloseTo(1, 5);
      expect(found.momentUnderLoad / -other.momentUnderLoad).toBeCloseTo(1, 5);
      expect(found.momentMidway / other.momentMidway).toBeCloseTo(1, 5);
      // Midway the parts nearly cancel in thick walls: held against the movement under the force.
      expect((found.inwardMidway + other.midway) / other.underLoad).toBeCloseTo(0, 5);
    },
  );
});

describe("Michell's exact plane ring (Barber, Elasticity, chapter 9, from memory), which is no beam at all", () => {
  const plane = (size: RingSize) => ({
    inner: size.meanRadius - size.depth / 2,
    outer: size.meanRadius + size.depth / 2,
    width: size.width,
    modulus: size.modulus,
    poisson: size.poisson!,
  });

  it.each([1, 2, 5, 10])('squeezed, %d mm of wall on a mean radius of 40 mm', (depth) => {
    const size = { meanRadius: 40, depth, width: 20, modulus: 2000, poisson: 0.36 };
    const found = squeezedRing(ringSection(size), 10);
    const exact = (at: number) => 2 * radialMovement(plane(size), 2, -10, 'outer', at, 40);
    expect(Math.abs(found.otherDiameter / exact(Math.PI / 2) - 1)).toBeLessThan(0.004);
    // The dent under a point force is not the ring's bending; at mid wall little of it is left.
    expect(Math.abs(found.loadedDiameter / -exact(0) - 1)).toBeLessThan(0.012);
  });

  it.each([
    [3, 2, 0.002],
    [3, 5, 0.006],
    [5, 2, 0.003],
    [5, 5, 0.013],
  ])('%d forces from inside, %d mm of wall', (count, depth, within) => {
    const size = { meanRadius: 40, depth, width: 20, modulus: 2000, poisson: 0.36 };
    const found = spreadRing(ringSection(size), count, 10);
    const exact = radialMovement(plane(size), count, 10, 'inner', 0, 40);
    expect(Math.abs(found.outwardUnderLoad / exact - 1)).toBeLessThan(within);
  });

  it('turns into Lamé when there are very many forces', () => {
    const size = { meanRadius: 40, depth: 5, width: 20, modulus: 2000, poisson: 0.36 };
    const [inner, outer] = [37.5, 42.5];
    const pressure = (200 * 10) / (2 * Math.PI * inner * 20);
    const lame = (pressure * inner ** 2) / (outer ** 2 - inner ** 2) / 2000;
    const moved = lame * (0.64 * outer + (1.36 * outer ** 2) / outer);
    expect(radialMovement(plane(size), 200, 10, 'inner', 0.1, outer)).toBeCloseTo(moved, 9);
  });
});

it('stress in a curved bar twice as wide outside as inside (Timoshenko and Goodier, from memory)', () => {
  // Their table of curved bars, in units of M / a²: hyperbolic distribution 7.725, exact by Golovin 7.755.
  const stress = wallStress(ringSection({ meanRadius: 1.5, depth: 1, width: 1, modulus: 1 }), 1, 0);
  expect(stress).toBeCloseTo(7.725, 3);
  expect(Math.abs(stress / 7.755 - 1)).toBeLessThan(0.005);
});

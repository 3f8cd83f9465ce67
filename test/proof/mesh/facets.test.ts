import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceOfProducts, NORMAL } from '../../../lib/proof/mesh/facets.js';
import { hasArea } from './exactCrossing.js';
import { facetsFrom } from './facetsFrom.js';
import type { Point } from './fixtures.js';
import { fuzz, uniform } from './fuzz.js';

const whole = (limit: number) => uniform(-limit, limit).map(Math.round);
const wholes = (limit: number) => fc.tuple(whole(limit), whole(limit), whole(limit));

/** Sine of the angle between a facet's normal and the exact one, corners being multiples of 2^-60. */
function normalError(...corners: [Point, Point, Point]): number {
  const exact = corners.map((corner) => corner.map((value) => BigInt(value * 2 ** 60)));
  const [u, v] = [1, 2].map((k) => exact[k].map((value, axis) => value - exact[0][axis]));
  const cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const length = Math.hypot(...cross.map(Number));
  const normal = facetsFrom(corners).subarray(NORMAL, NORMAL + 3);
  return Math.hypot(...cross.map((value, axis) => Number(value) / length - normal[axis]));
}

describe('differenceOfProducts', () => {
  it('keeps full accuracy where the products nearly cancel', () => {
    fuzz(
      fc.property(whole(2 ** 50), whole(2 ** 50), whole(1000), whole(1000), (a, b, near, by) => {
        const [c, d] = [a + near, b + by];
        const exact = BigInt(a) * BigInt(b) - BigInt(c) * BigInt(d);
        expect(Math.abs(differenceOfProducts(a, b, c, d) - Number(exact))).toBeLessThanOrEqual(
          1e-15 * Math.abs(Number(exact)),
        );
      }),
      2000,
    );
  });
});

describe('the normal of a facet', () => {
  it('is exact for a sliver with all its edges long', () => {
    fuzz(
      fc.property(wholes(2 ** 40), wholes(2), fc.constantFrom(2, 3, 5), (far, by, part) => {
        const between = far.map((value, axis) => Math.round(value / part) + by[axis]) as Point;
        fc.pre(hasArea([[0, 0, 0], far, between]));
        expect(normalError([0, 0, 0], far, between)).toBeLessThan(1e-15);
        expect(normalError(between, [0, 0, 0], far)).toBeLessThan(1e-15);
      }),
      500,
    );
  });

  it('is exact for a needle, wherever its short edge stands', () => {
    fuzz(
      fc.property(wholes(2 ** 52), wholes(2 ** 52), wholes(2 ** 20), (far, start, by) => {
        // The long edges span more digits than a double holds, so their differences are rounded.
        const tip = far.map((value) => value * 2 ** -49) as Point;
        const one = start.map((value) => value * 2 ** -60) as Point;
        const two = start.map((value, axis) => (value + by[axis]) * 2 ** -60) as Point;
        for (const corners of [
          [one, two, tip],
          [two, tip, one],
          [tip, one, two],
        ] as [Point, Point, Point][])
          expect(normalError(...corners)).toBeLessThan(1e-14);
      }),
      500,
    );
  });

  it('is zero for a triangle without area', () => {
    for (const corners of [
      [
        [1, 2, 3],
        [1, 2, 3],
        [4, 5, 6],
      ],
      [
        [0, 0, 0],
        [1, 2, 3],
        [2, 4, 6],
      ],
      [
        [5, 5, 5],
        [5, 5, 5],
        [5, 5, 5],
      ],
    ] as Point[][])
      expect([...facetsFrom(corners).subarray(NORMAL, NORMAL + 3)].map(Math.abs)).toEqual([0, 0, 0]);
  });
});

import { describe, expect, it } from 'vitest';
import { actingOn, gapOf } from '../../../lib/fit/play/acting.js';
import { climb } from '../../../lib/fit/play/climb.js';
import type { Contact, Motion } from '../../../lib/fit/play/contact.js';
import { furthest } from '../../../lib/fit/play/furthest.js';
import { outerBound } from '../../../lib/fit/play/outerBound.js';

/** A gap written down as a function of the six numbers of both motions; slopes by differences. */
function contact(
  gap: (a: Float64Array, b: Float64Array) => number,
  { between = ['part', 'frame'], smooth = true }: Partial<Pick<Contact, 'between' | 'smooth'>> = {},
): Contact {
  const at = (motions: Float64Array, first: number, second: number) =>
    gap(motions.subarray(first, first + 6), motions.subarray(second, second + 6));
  return {
    between,
    feature: 'flanks',
    z: 0,
    smooth,
    place: null,
    read: (_, motions, first, second, slopes) => {
      for (let k = 0; slopes && k < 12; k++) {
        const nudged = (by: number) => {
          const moved = motions.slice();
          moved[(k < 6 ? first : second - 6) + k] += by;
          return at(moved, first, second);
        };
        slopes[k] = (nudged(1e-6) - nudged(-1e-6)) / 2e-6;
      }
      return at(motions, first, second);
    },
  };
}

/** Every number of a motion between plus and minus a limit. */
const within = (limits: readonly number[]): Contact[] =>
  limits.flatMap((limit, k) => [contact((m) => limit - m[k]), contact((m) => limit + m[k])]);
const UP: Motion = [0, 0, 1, 0, 0, 0];
const [Z, B, C] = [2, 4, 5];

describe('climbing on from a motion that is allowed', () => {
  it('slides along what it runs into as far as there is a way on: to the end of a circle', () => {
    const circle = contact((m) => 10 - Math.hypot(m[0] + 9.9, m[1]));
    const acting = actingOn([circle, ...within([2, 2, 2, 0.2, 0.2, 0.2])], new Map([['part', 0]]));
    const point = Float64Array.of(10 * Math.cos(0.05) - 9.9, -10 * Math.sin(0.05), ...new Float64Array(10));
    const value = climb(Float64Array.of(1, 0, 0, 0, 0, 0), acting, point);
    expect(value).toBeGreaterThan(0.098);
    expect(value).toBeLessThan(0.101);
    expect(value).toBeCloseTo(point[0], 12);
    for (const one of acting) expect(gapOf(one, point)).toBeGreaterThan(-1.001e-3);
  });

  it('goes no further in one step than it may, and no further than the last of them', () => {
    const far = actingOn(within([50, 1, 1, 1, 1, 1]), new Map([['part', 0]]));
    const point = new Float64Array(12);
    expect(climb(Float64Array.of(1, 0, 0, 0, 0, 0), far, point)).toBeCloseTo(12 * 0.1, 9);
    // A turn goes a tenth as far as a shift, since it moves teeth ten times as far.
    const turned = new Float64Array(12);
    expect(climb(Float64Array.of(0, 0, 0, 0, 0, 1), far, turned)).toBeCloseTo(12 * 0.01, 9);
  });
});

describe('the furthest motion', () => {
  it('of a train that turns freely is that against the part which is kept', () => {
    const loose = ['driver', 'driven'];
    const pair: Contact[] = [
      contact((a, b) => 1 - (b[0] - a[0]), { between: ['driver', 'driven'] }),
      contact((a, b) => 2 + (b[0] - a[0]), { between: ['driver', 'driven'] }),
    ];
    const direction = (sign: number): Record<string, Motion> => ({ driven: [sign, 0, 0, 0, 0, 0] });
    expect(furthest(direction(1), pair, loose).value).toBe(Number.POSITIVE_INFINITY);
    expect(furthest(direction(1), pair, loose, [['driver', 0]]).value).toBeCloseTo(1, 9);
    expect(furthest(direction(-1), pair, loose, [['driver', 0]]).value).toBeCloseTo(2, 9);
    const { motions } = furthest(direction(1), pair, loose, [['driver', 0]]);
    expect([motions.driver[0], motions.driven[0]]).toEqual([0, expect.closeTo(1, 9)]);
  });

  it('follows gaps that bend to where they close', () => {
    const closing = contact((m) => 1 - m[0] - 0.3 * m[0] ** 2);
    const found = furthest({ part: [1, 0, 0, 0, 0, 0] }, [closing, ...within([9, 9, 9, 1, 1, 1])], ['part']);
    expect(found.value).toBeCloseTo((Math.sqrt(2.2) - 1) / 0.6, 3);
    expect(found.motions.part[0]).toBeCloseTo(found.value, 9);
    expect(found.heldBy).toEqual(['flanks']);
  });
});

describe('what a motion cannot exceed', () => {
  const limits = within([1, 1, 3, 0.3, 0.3, 0.3]);

  it('is never less than the furthest one and close to it, where leaning lets a part rise', () => {
    // z ≤ 1 + 10 b² and z ≤ 1.5 ∓ 3 b meet at b = (√29 − 3) / 20.
    const b = (Math.sqrt(29) - 3) / 20;
    const bound = outerBound(
      UP,
      [
        contact((m) => 1 + 10 * m[B] ** 2 - m[Z]),
        contact((m) => 1.5 - 3 * m[B] - m[Z]),
        contact((m) => 1.5 + 3 * m[B] - m[Z]),
        ...within([0.1, 0.1, 3, 0.01, 9, 0.01]),
      ],
      'part',
    );
    expect(bound).toBeGreaterThanOrEqual(1.5 - 3 * b - 1e-9);
    expect(bound).toBeLessThan(1.5 - 3 * b + 0.05);
  });

  it('counts what two numbers do together, in each of their quarters', () => {
    for (const [one, other] of [
      [1, 1],
      [1, -1],
    ]) {
      const saddle = contact((m) => 1 + one * other * 10 * m[B] * m[C] - m[Z]);
      const bound = outerBound(UP, [saddle, ...limits], 'part');
      expect(bound).toBeGreaterThanOrEqual(1.9 - 1e-9);
      expect(bound).toBeLessThan(1.95);
    }
  });

  it('leaves out places that nothing allowed reaches', () => {
    // Closed from the lesser root of 1 − z + 0.2 z² on, and open again from the greater one, where no way leads.
    const wall = contact((m) => 1 - m[Z] + 0.2 * m[Z] ** 2);
    const bound = outerBound(UP, [wall, ...within([0.1, 0.1, 1, 0.01, 0.01, 0.01])], 'part');
    const least = (1 - Math.sqrt(0.2)) / 0.4;
    expect(bound).toBeGreaterThanOrEqual(least - 1e-9);
    expect(bound).toBeLessThan(least + 0.02);
  });

  it('is nothing that can be shown where a gap opens again, or where nothing holds', () => {
    const opens = contact((m) => 1 - m[Z] + m[Z] ** 2);
    expect(outerBound(UP, [opens, ...within([0.1, 0.1, 99, 0.01, 0.01, 0.01])], 'part')).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(outerBound(UP, within([1, 1]), 'part')).toBe(Number.POSITIVE_INFINITY);
  });
});

import { describe, expect, it } from 'vitest';
import { degrees } from '../../lib/tooth/gear.js';
import { allowsEqualSpacing, neighbourClearance, planetPlaces } from '../../lib/train/assembly.js';
import { phases } from '../../lib/train/phases.js';
import { ratios } from '../../lib/train/ratios.js';
import { speeds } from '../../lib/train/speeds.js';
import { planetaryLinks } from '../planetarySets.js';

const near = (value: number, printed: number, room: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(room);

describe('ratios', () => {
  // Elements of Metric Gear Technology, planetary type 1/4, solar type 1/1.3333 and star type −1/3 of 16/48; the
  // others from the Willis equation. From memory, recomputed.
  it.each([
    [16, 48, 4, 1.333333, -3],
    [20, 80, 5, 1.25, -4],
    [12, 42, 4.5, 1.285714, -3.5],
    [21, 57, 3.714286, 1 + 21 / 57, -57 / 21],
    [15, 63, 5.2, 1 + 15 / 63, -63 / 15],
  ])('sun %d, ring %d', (sun, ring, ringHeld, sunHeld, carrierHeld) => {
    const found = ratios(sun, ring);
    near(found.ringHeld, ringHeld, 5.1e-7);
    near(found.sunHeld, sunHeld, 5.1e-7);
    near(found.carrierHeld, carrierHeld, 1e-12);
  });

  // Shigley, example 13-6 (13-5 in some editions): ring held, sun 100 r/min clockwise. From memory, recomputed.
  it('speeds of 20/30/80 with the ring held', () => {
    const turning = speeds(planetaryLinks(20, 30, 80), { sun: -100, ring: 0 });
    near(turning.carrier, -20, 1e-12);
    near(turning.planet, 33 + 1 / 3, 1e-12);
  });
});

describe('how many planets a set takes', () => {
  // Elements of Metric Gear Technology, planetary conditions 2 and 3: rules from memory; counts derived from them
  // apart from this project. Sun, planet, ring, largest count by the neighbour rule alone, counts by both rules.
  it.each([
    [20, 30, 80, 4, [2, 4]],
    [16, 16, 48, 5, [2, 4]],
    [12, 15, 42, 4, [2, 3]],
    [18, 18, 54, 5, [2, 3, 4]],
    [24, 24, 72, 5, [2, 3, 4]],
    [21, 18, 57, 5, [2, 3]],
    [15, 24, 63, 4, [2, 3]],
    [10, 25, 60, 3, [2]],
    [30, 12, 54, 9, [2, 3, 4, 6, 7]],
  ])('%d/%d/%d', (sun, planet, ring, most, both) => {
    const counts = Array.from({ length: 14 }, (_, i) => i + 2);
    const clear = counts.filter((n) => neighbourClearance((sun + planet) / 2, n, planet / 2 + 1) > 0);
    expect(Math.max(...clear)).toBe(most);
    expect(clear.filter((n) => allowsEqualSpacing(sun, ring, n))).toEqual(both);
  });

  // Handbook condition (z_s + z_r) θ/180 whole: from memory; places derived from it.
  it('nearest places where equal ones do not assemble', () => {
    expect(planetPlaces(20, 80, 3)).toEqual([0, 118.8, 241.2].map((x) => expect.closeTo(x, 10)));
    const four = planetPlaces(21, 57, 4);
    near(four[1], 92.3077, 5e-5);
    near(four[3], 272.3077, 5e-5);
  });
});

describe('phases of planets and ring', () => {
  // Derived from the mesh condition apart from this project, no page claimed: places, planet and ring turns, degrees.
  it.each([
    ['20/30/80', 20, 30, 80, [0, 90, 180, 270], [6, 0, 6, 0], 0],
    ['16/16/48', 16, 16, 48, [0, 90, 180, 270], [11.25, 11.25, 11.25, 11.25], 0],
    ['18/18/54', 18, 18, 54, [0, 120, 240], [10, 10, 10], 0],
    ['21/18/57', 21, 18, 57, [0, 120, 240], [10, 10, 10], 0],
    ['12/15/42', 12, 15, 42, [0, 120, 240], [0, 0, 0], 360 / 84],
  ] as const)('%s', (_, sunTeeth, planetTeeth, ringTeeth, places, planets, ring) => {
    const found = phases({ sunTeeth, planetTeeth, ringTeeth }, places);
    for (const [i, turn] of planets.entries()) near(degrees(found.planets[i]), turn, 1e-9);
    near(degrees(found.ringTooth), ring, 1e-9);
  });
});

import { describe, expect, it } from 'vitest';
import { type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { halfThicknessAngle } from '../../lib/tooth/thickness.js';
import {
  largestMateTipRadius,
  leastRingTipRadius,
  trimmingMargin,
  trochoidMargin,
} from '../../lib/train/interference.js';
import { centreDistance, pairSizes } from '../../lib/train/pair.js';
import { gear, ring } from '../tooth/gears.js';

describe('limits along the line of action, by coordinates', () => {
  // Centre 1 at 0, pitch point on +x; a point of the line of action `along` mm beyond gear 1's point of tangency.
  const point = (baseRadius: number, angle: number, along: number) => [
    baseRadius * Math.cos(angle) + along * Math.sin(angle),
    baseRadius * Math.sin(angle) - along * Math.cos(angle),
  ];

  it.each([1, 1.02])(
    'ring tips meet the planet’s involute where it begins (form radius %d base radii)',
    (share) => {
      const pair = pairSizes(gear(15), ring(45, { profileShift: 0.1 }));
      const formRadius1 = share * pair.baseRadius1;
      const along = Math.sqrt(formRadius1 ** 2 - pair.baseRadius1 ** 2);
      const [x, y] = point(pair.baseRadius1, pair.workingPressureAngle, along);
      expect(Math.hypot(x, y)).toBeCloseTo(formRadius1, 10);
      expect(leastRingTipRadius({ ...pair, formRadius1 })).toBeCloseTo(
        Math.hypot(x + pair.centreDistance, y),
        10,
      );
    },
  );

  it.each([1, 1.02])(
    'mate tips meet the pinion’s involute where it begins (form radius %d base radii)',
    (share) => {
      const pair = pairSizes(gear(15), gear(45, { profileShift: 0.1 }));
      const formRadius1 = share * pair.baseRadius1;
      const along = Math.sqrt(formRadius1 ** 2 - pair.baseRadius1 ** 2);
      const [x, y] = point(pair.baseRadius1, pair.workingPressureAngle, along);
      expect(largestMateTipRadius({ ...pair, formRadius1 })).toBeCloseTo(
        Math.hypot(x - pair.centreDistance, y),
        10,
      );
    },
  );

  it('without a form radius the base circle counts, and so it does for one below it', () => {
    const pair = pairSizes(gear(15), ring(45));
    expect(leastRingTipRadius({ ...pair, formRadius1: pair.baseRadius1 - 0.2 })).toBe(
      leastRingTipRadius(pair),
    );
  });
});

/** How far a point lies inside a tooth of `gear` across the flank, mm along the circle; negative outside. */
function depthInTooth(part: Gear, rotation: number, radius: number, angle: number): number {
  const { tipRadius } = gearSizes(part);
  if (part.internal ? radius < tipRadius : radius > tipRadius) return Number.NEGATIVE_INFINITY;
  const pitch = (2 * Math.PI) / part.teeth;
  const half = halfThicknessAngle(part, radius);
  const inPitch = angle - rotation - Math.round((angle - rotation) / pitch) * pitch;
  return radius * ((part.internal ? pitch / 2 - half : half) - Math.abs(inPitch));
}

/**
 * Deepest that any tip corner of the planet gets into a ring tooth, with the planet's centre at `distance` on +x
 * and its teeth turned by `turn`; the ring has the turn that meshes at the proper distance.
 */
function deepest(planet: Gear, outer: Gear, distance: number, turn: number): number {
  const { tipRadius } = gearSizes(planet);
  const corner = halfThicknessAngle(planet, tipRadius);
  // A planet tooth on the line of centres fills a ring space there.
  const ringTurn = Math.PI / outer.teeth + (turn * planet.teeth) / outer.teeth;
  let worst = Number.NEGATIVE_INFINITY;
  for (let tooth = 0; tooth < planet.teeth; tooth++)
    for (const side of [-1, 1]) {
      const direction = turn + (2 * Math.PI * tooth) / planet.teeth + side * corner;
      const x = distance + tipRadius * Math.cos(direction);
      const y = tipRadius * Math.sin(direction);
      worst = Math.max(worst, depthInTooth(outer, ringTurn, Math.hypot(x, y), Math.atan2(y, x)));
    }
  return worst;
}

const turns = (planet: Gear, steps: number) =>
  Array.from({ length: steps }, (_, i) => (2 * Math.PI * i) / planet.teeth / steps);

describe('margins against teeth that are really turned and pushed', () => {
  it.each([
    [30, 37],
    [30, 38],
    [30, 39],
    [30, 40],
    [45, 52],
    [45, 53],
    [45, 54],
    [60, 68],
    [60, 69],
    [25, 34],
  ])('rolling %d in %d collides exactly when the trochoid margin is negative', (teeth, ringTeeth) => {
    const [planet, outer] = [gear(teeth), ring(ringTeeth)];
    const distance = centreDistance(planet, outer);
    const worst = Math.max(...turns(planet, 400).map((turn) => deepest(planet, outer, distance, turn)));
    const margin = trochoidMargin(pairSizes(planet, outer));
    // Flanks in contact touch to rounding; a collision of tips goes deeper than that.
    expect(worst > 1e-6, `deepest ${worst} mm, margin ${margin}`).toBe(margin < 0);
  });

  it.each([
    [24, 38],
    [24, 40],
    [24, 41],
    [24, 43],
    [30, 45],
    [30, 46],
    [30, 47],
    [30, 48],
    [50, 65],
    [50, 66],
    [50, 67],
  ])('pushing %d into %d collides exactly when the trimming margin is negative', (teeth, ringTeeth) => {
    const [planet, outer] = [gear(teeth), ring(ringTeeth)];
    const distance = centreDistance(planet, outer);
    let worst = Number.NEGATIVE_INFINITY;
    for (const turn of turns(planet, 30))
      for (let back = 0; back <= 2.4; back += 0.02)
        worst = Math.max(worst, deepest(planet, outer, distance - back, turn));
    const margin = trimmingMargin(pairSizes(planet, outer)) ?? -1;
    expect(worst > 1e-6, `deepest ${worst} mm, margin ${margin}`).toBe(margin < 0);
  });

  it('tip circles that do not cross leave endless room, nested ones none', () => {
    const pair = pairSizes(gear(20), ring(60));
    expect(trochoidMargin({ ...pair, tipRadius2: 31.1 })).toBe(Number.POSITIVE_INFINITY);
    expect(trochoidMargin({ ...pair, tipRadius1: 40, tipRadius2: 19 })).toBe(Number.NEGATIVE_INFINITY);
  });
});

import { describe, expect, it } from 'vitest';
import { overlapRatio, pathOfContact, transverseContactRatio } from '../../lib/train/contactRatio.js';
import { type PairSizes, pairSizes } from '../../lib/train/pair.js';
import { gear, ring } from '../tooth/gears.js';

/** Radii on gears 1 and 2 of the point `along` the line of action, by coordinates: centre 1 at 0, centre 2 on +x. */
function radiiAt(pair: PairSizes, along: number): [number, number] {
  const angle = pair.workingPressureAngle;
  const tangency = [pair.baseRadius1 * Math.cos(angle), pair.baseRadius1 * Math.sin(angle)];
  const x = tangency[0] + along * Math.sin(angle);
  const y = tangency[1] - along * Math.cos(angle);
  // Gear 2 lies beyond the pitch point; the centre of a ring lies on the other side of the planet's.
  const centre2 = pair.internal ? -pair.centreDistance : pair.centreDistance;
  return [Math.hypot(x, y), Math.hypot(x - centre2, y)];
}

const pairs: [string, PairSizes][] = [
  ['external', pairSizes(gear(20), gear(33))],
  [
    'external, helical, shifted',
    pairSizes(gear(17, { helixAngle: 25, profileShift: 0.3 }), gear(40, { helixAngle: 25 })),
  ],
  ['internal', pairSizes(gear(30), ring(80))],
  ['internal, shifted', pairSizes(gear(24), ring(60, { profileShift: 0.4 }))],
];

describe('path of contact', () => {
  it.each(pairs)('%s: begins at the tip of gear 2 and ends at the tip of gear 1', (_, pair) => {
    const { start, end } = pathOfContact(pair);
    expect(radiiAt(pair, start)[1]).toBeCloseTo(pair.tipRadius2, 10);
    expect(radiiAt(pair, end)[0]).toBeCloseTo(pair.tipRadius1, 10);
    expect(transverseContactRatio(pair)).toBeCloseTo((end - start) / pair.basePitch, 12);
  });

  it.each(pairs)('%s: form radii cut it short, each on its own gear', (_, pair) => {
    const whole = pathOfContact(pair);
    const third = (whole.end - whole.start) / 3;
    const formRadius1 = radiiAt(pair, whole.start + third)[0];
    const formRadius2 = radiiAt(pair, whole.end - third)[1];
    const cut = pathOfContact({ ...pair, formRadius1, formRadius2 });
    expect(cut.start).toBeCloseTo(whole.start + third, 9);
    expect(cut.end).toBeCloseTo(whole.end - third, 9);
    expect(transverseContactRatio({ ...pair, formRadius1, formRadius2 })).toBeCloseTo(
      third / pair.basePitch,
      9,
    );
  });

  it.each(pairs)('%s: form radii beyond its reach leave it as it is', (_, pair) => {
    const whole = pathOfContact(pair);
    const formRadius1 = radiiAt(pair, whole.start)[0] - 1e-6;
    const formRadius2 = radiiAt(pair, whole.end)[1] + (pair.internal ? 1e-6 : -1e-6);
    expect(pathOfContact({ ...pair, formRadius1, formRadius2 })).toEqual(whole);
  });

  it('is no contact at all, not a negative one, when tips do not reach', () => {
    const short = { ...pairSizes(gear(20), gear(20)), tipRadius1: 9.8, tipRadius2: 9.8 };
    expect(transverseContactRatio(short)).toBe(0);
  });
});

describe('overlap ratio', () => {
  it('is face width over axial pitch', () => {
    const helical = gear(20, { module: 2, helixAngle: 30 });
    const axialPitch = (Math.PI * 2) / Math.sin(Math.PI / 6);
    expect(overlapRatio(helical, axialPitch)).toBeCloseTo(1, 12);
    expect(overlapRatio(gear(20), 30)).toBe(0);
  });
});

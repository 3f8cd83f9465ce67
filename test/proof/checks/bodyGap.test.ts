import { describe, expect, it } from 'vitest';
import { type BodyFindings, type BodyGap, measureBodies } from '../../../lib/proof/bodies.js';
import type { BodyPair } from '../../../lib/proof/bodyPairs.js';
import { bodyGap } from '../../../lib/proof/checks/bodyGap.js';
import { fitted } from '../../planetarySets.js';
import { referenceSet } from '../../sets.js';
import { box } from '../mesh/fixtures.js';

const spec = referenceSet();
const train = fitted(spec);
const drawn = { ...train, meshes: [train.meshes[0]] };
const checkOf = (bodies: BodyFindings) => bodyGap({ spec, drawn, bodies });
const check = (gaps: BodyGap[]) => checkOf({ gaps, bodies: [], trees: new Map() });
const mates = (distance: number | null): BodyGap => ({ between: ['sun', 'planet-1'], as: 'mates', distance });
const apart = (distance: number | null, least?: number): BodyGap => ({
  between: ['planet-1', 'planet-2'],
  as: 'apart',
  least,
  distance,
});

describe('bodies that are to stay apart', () => {
  it('may be as far apart as they like', () => {
    for (const distance of [0.25, 0.4, 3, null])
      expect(check([mates(0.25), apart(distance)])).toMatchObject({ holds: true, value: 0 });
  });

  it('keep the gap, or the least that they were given', () => {
    expect(check([mates(0.25), apart(0.1)])).toMatchObject({
      holds: false,
      level: 'must',
      value: expect.closeTo(0.15, 12),
      says: expect.stringMatching(/farthest off: planet-1 and planet-2/),
    });
    expect(check([mates(0.25), apart(0.4, 0.6)])).toMatchObject({
      holds: false,
      value: expect.closeTo(0.2, 12),
    });
    expect(check([mates(0.25), apart(0.15, 0.1)]).holds).toBe(true);
    expect(check([mates(0.25), apart(0)]).value).toBeCloseTo(0.25, 12);
  });
});

describe('teeth in mesh', () => {
  it('are off where they are too far apart as well, or out of reach', () => {
    expect(check([mates(0.31)])).toMatchObject({ holds: false, value: expect.closeTo(0.06, 12) });
    expect(check([mates(0.19)])).toMatchObject({ holds: false, value: expect.closeTo(0.06, 12) });
    expect(check([mates(null)])).toMatchObject({ holds: false, value: null });
  });

  it('are named by the worst of them', () => {
    const gaps = [
      mates(0.25),
      { ...mates(0.35), between: ['sun', 'planet-2'] as [string, string] },
      apart(0.2),
    ];
    expect(check(gaps).says).toMatch(
      /0\.2500 to 0\.3500 mm between sun and planets.*farthest off: sun and planet-2/,
    );
  });
});

// The same from meshes: two boxes beside each other, distances looked for up to three gaps.
it('is found on meshes that stand too near each other, or that reach into each other', () => {
  const parts = (distance: number) => [
    { name: 'sun', mesh: box([0, 0, 0], [1, 1, 1]) },
    { name: 'planet-1', mesh: box([1.25, 0, 0], [2, 1, 1]) },
    { name: 'planet-2', mesh: box([2 + distance, 0, 0], [4, 1, 1]) },
  ];
  const pairs: BodyPair[] = [
    { between: ['sun', 'planet-1'], as: 'mates' },
    { between: ['planet-1', 'planet-2'], as: 'apart' },
  ];
  const measured = (distance: number) => checkOf(measureBodies(parts(distance), [], pairs, 0.25));
  expect(measured(0.3)).toMatchObject({ holds: true });
  expect(measured(2)).toMatchObject({ holds: true });
  expect(measured(0.2)).toMatchObject({ holds: false, value: expect.closeTo(0.05, 9) });
  expect(measured(-0.5)).toMatchObject({ holds: false, value: expect.closeTo(0.25, 9) });
});

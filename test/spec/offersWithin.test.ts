// What is advised or offered stays within the limits of the parameter file.
import { describe, expect, it } from 'vitest';
import { skipAdvice } from '../../lib/fit/skipAdvice.js';
import { advise } from '../../lib/fit/trials/advise.js';
import { entryProblems } from '../../lib/fit/trials/entryProblems.js';
import { profileAdvice } from '../../lib/fit/trials/profileAdvice.js';
import { logSchema, type Trial } from '../../lib/fit/trials/trialSchema.js';
import type { Ways } from '../../lib/proof/nearest/changes.js';
import { setWays } from '../../lib/proof/nearest/setChanges.js';
import { smallerWays } from '../../lib/proof/nearest/smallerWays.js';
import { trainWays } from '../../lib/proof/nearest/trainChanges.js';
import { resolveTried } from '../../lib/proof/nearest/workingOffers.js';
import { guideAt } from '../../lib/spec/guide.js';
import { resolveProfile } from '../../lib/spec/profileFile.js';
import type { Spec } from '../../lib/spec/types.js';
import { withoutDerived } from '../../lib/spec/withoutDerived.js';
import { setOf } from '../sets.js';
import { gearOf, pairOf, rackOf, ringPairOf } from '../trains.js';
import { file } from './doors.js';
import { type File, problemsOf, spinner, withValue } from './table.js';

const sets: Spec[] = [
  setOf(15, 15, 45, 5),
  setOf(12, 18, 48, 3, { module: 0.4, fit: { gap: 0.2 } }),
  setOf(12, 18, 48, 3, { module: 20, faceWidth: 290, ring: { teeth: 48, rim: 90 }, fit: { gap: 2 } }),
  pairOf(12, 30, { faceWidth: 280 }),
  ringPairOf(12, 40, { module: 19 }),
  rackOf(12, 10),
  gearOf({ internal: true, teeth: 12, mateTeeth: 6, flange: { diameter: 60, thickness: 4 } }),
];

/** Every number that a search would try, nothing being good enough. */
function triedBy({ single }: Ways): [path: string, value: number][] {
  const tried: [string, number][] = [];
  for (const { find } of single)
    find((change) => {
      for (const [path, value] of Object.entries(change))
        if (typeof value === 'number') tried.push([path, value]);
      return false;
    });
  return tried;
}

describe('offers', () => {
  it.each(sets)('tried for %o stay within the limits', (spec) => {
    const ways = spec.kind === 'planetary' ? [setWays(spec)] : [trainWays(spec), smallerWays(spec)];
    const tried = ways.flatMap(triedBy);
    expect(tried.length).toBeGreaterThan(20);
    for (const [path, value] of tried) {
      const { minimum, maximum } = guideAt(path.split('.'), spec)!;
      expect(value, path).toBeGreaterThanOrEqual(minimum!);
      expect(value, path).toBeLessThanOrEqual(maximum!);
    }
  });

  it('of rim, face width, gap and module against skipping make files that resolve', () => {
    const paths = { rim: 'ring.rim', faceWidth: 'faceWidth', gap: 'fit.gap', module: 'module' } as const;
    let advised = 0;
    for (const more of [
      { module: 1, faceWidth: 6, ring: { teeth: 45, rim: 1 } },
      { module: 0.5, faceWidth: 4, fit: { gap: 0.3 } },
      {
        module: 2,
        faceWidth: 150,
        ring: { teeth: 45, rim: 30 },
        limits: { pinchForce: 10_000, sunTorque: 900 },
      },
    ]) {
      const spec = setOf(15, 15, 45, 5, more);
      const { pinchForce, sunTorque } = spec.limits;
      for (const [key, value] of Object.entries(skipAdvice(spec, {}, { pinchForce, sunTorque }))) {
        advised++;
        const changed = withValue(
          paths[key as keyof typeof paths],
          value,
          structuredClone(withoutDerived(spec)),
        );
        expect(problemsOf(changed), `${key} ${value}`).toEqual([]);
      }
    }
    expect(advised).toBeGreaterThan(3);
  });

  it.each<[string, Trial[]]>([
    [
      'fused at the largest gaps',
      Array.from({ length: 6 }, () => ({ gap: 2, outcome: 'fused', growth: -0.5 })),
    ],
    [
      'loose at the smallest',
      Array.from({ length: 6 }, () => ({ gap: 0.02, outcome: 'loose', growth: 0.5 })),
    ],
    [
      'far grown and shrunk',
      [
        { gap: 0.02, outcome: 'free', growth: 0.5, readings: bars(20.4) },
        { gap: 0.03, outcome: 'loose', growth: 0.5, readings: bars(20.4) },
        { gap: 0.02, outcome: 'free', growth: 0.5, readings: bars(19.2) },
      ],
    ],
  ])('from prints that came out %s are gaps and profiles that a file takes', (_, trials) => {
    const problems = entryProblems(logSchema.safeParse({ trials }).error?.issues ?? [], { trials });
    expect(problems).toEqual([]);
    const advice = advise(trials, {});
    for (const { fit, next, profile: told } of advice) {
      for (const gap of [fit.gap, ...next.map((one) => one.gap)])
        expect(file('fit.gap')(gap), String(gap)).toEqual([]);
      expect(problemsOf(told, resolveProfile)).toEqual([]);
    }
  });

  it('from a log for a profile leave out a gap beyond those a file takes', () => {
    const figure = (mean: number) => ({ mean, sd: 0.01, least: mean, most: mean, known: true });
    const told = (gap: number, growth: number) =>
      profileAdvice({ dryness: 'dry' }, gap, 0, {
        growth: figure(growth),
        firstLayerGrowth: figure(0.1),
        shrinkage: figure(0),
        misfits: [],
      });
    // The drawn gap stays: what is set back on both sides is taken off the gap.
    expect(told(0.3, 0.1).fit).toEqual({ gap: 0.1 });
    for (const [gap, growth] of [
      [1.9, -0.1],
      [0.1, 0.1],
    ])
      expect(told(gap, growth)).toMatchObject({ printer: { growth } });
    expect(told(1.9, -0.1).fit).toBeUndefined();
    expect(told(0.1, 0.1).fit).toBeUndefined();
  });

  it('for a single value in place of a group hold it, wherever a key takes it', () => {
    for (const [path, value, key] of [
      ['printer.bed', 300, 'width'],
      ['printer.bed', 300, 'depth'],
      ['fit', 0.3, 'gap'],
      ['bevel', 1, 'size'],
      ['helix', 25, 'angle'],
      ['helix', 'helical', 'form'],
      ['carrier', 'cage', 'form'],
      ['sun.bore', 'hexagon', 'shape'],
      ['sun.bore', 6, 'diameter'],
      ['sun.knob', 12, 'diameter'],
      ['printer', 0.6, 'nozzle'],
    ] as const) {
      const [problem] = problemsOf(withValue(path, value));
      expect((problem.nearest[0] as File)[key], path).toBe(value);
      expect(problemsOf(withValue(path, problem.nearest[0]))).toEqual([]);
    }
  });
});

function bars(read: number) {
  return Array.from({ length: 8 }, () => ({ feature: 'bar' as const, drawn: 20, read }));
}

describe('an offer for a shift', () => {
  const shift = (path: string, value: number, more: File = {}) => {
    const given = () => withValue(path, value, { ...spinner(), ...structuredClone(more) });
    const [{ parameter, nearest }] = problemsOf(given(), resolveTried);
    expect(parameter).toBe(path);
    return { offered: nearest[0], left: problemsOf(withValue(path, nearest[0], given()), resolveTried) };
  };

  it.each([
    ['ring.profileShift', 6, {}, 0],
    ['sun.profileShift', 2, { ring: { profileShift: 0 } }, 0],
    [
      'sun.profileShift',
      2,
      { ring: { profileShift: 0.5 }, planets: { teeth: 15, count: 5, profileShift: 0.1 } },
      0.3,
    ],
    ['sun.profileShift', 5, {}, 1.5],
  ])('%s %d keeps one centre distance', (path, value, more, offer) => {
    // x_ring = x_sun + 2 x_planet for rings of z_sun + 2 z_planet (ISO 21771).
    const { offered, left } = shift(path, value, more);
    expect(offered).toBeCloseTo(offer, 6);
    expect(left).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { fitDrawn, fitTrain } from '../../../lib/fit/train/fitTrain.js';
import type { TrainGear } from '../../../lib/fit/train/train.js';
import { trainNumbers } from '../../../lib/fit/train/trainNumbers.js';
import type { PairSpec } from '../../../lib/spec/types.js';
import { tipThickness } from '../../../lib/tooth/thickness.js';
import { centreDistance } from '../../../lib/train/pair.js';
import { specificSliding } from '../../../lib/train/specificSliding.js';
import { refusalOf } from '../../refusalOf.js';
import { gearOf, pairOf, rackOf, ringPairOf } from '../../trains.js';

const shifted = (pinion: number, wheel: number, more: object = {}) =>
  pairOf(pinion, wheel, { profileShift: 'solve', helix: { form: 'spur' }, ...more });
const gearsOf = (spec: PairSpec): TrainGear[] => trainNumbers(spec).gears;
const shiftsOf = (spec: PairSpec) => gearsOf(spec).map(({ gear }) => gear.profileShift);

describe('shifts that a centre distance asks for', () => {
  const pairs: [number, number, number][] = [
    [8, 30, 1],
    [10, 10, 0.8],
    [12, 40, -0.2],
    [17, 25, 0],
    [20, 30, 0.4],
    [30, 60, 1],
  ];

  it.each(pairs)('%d / %d moved apart by %d modules: make it, in range, with tips left', (one, two, by) => {
    for (const module of [0.8, 1.5, 4])
      for (const shiftBalance of ['sliding', 'none']) {
        const distance = (module * (one + two)) / 2 + by * module;
        const spec = shifted(one, two, {
          module,
          faceWidth: 20,
          centreDistance: distance,
          shiftBalance,
          fit: { gap: 0.1 },
        });
        const gears = gearsOf(spec);
        const [pinion, wheel] = gears.map(({ gear }) => gear);
        expect(centreDistance(pinion, wheel)).toBeCloseTo(distance, 6);
        for (const { gear, radii, relief } of gears) {
          expect(gear.profileShift).toBeGreaterThanOrEqual(-1);
          expect(gear.profileShift).toBeLessThanOrEqual(1.5);
          expect(tipThickness(gear, radii.tip, relief) / module).toBeGreaterThan(0.1);
        }
      }
  });

  it('slide alike on both gears, where neither a range nor undercut stands against it', () => {
    for (const [one, two, by] of [
      [17, 25, 0.3],
      [20, 30, 0.4],
      [22, 44, 0.2],
    ]) {
      const numbers = trainNumbers(
        shifted(one, two, { centreDistance: 0.75 * (one + two) + 1.5 * by, shiftBalance: 'sliding' }),
      );
      const { first, second } = specificSliding(numbers.meshes[0].pair!);
      expect(first / second).toBeCloseTo(1, 2);
      // Nothing but the pinion's share makes them alike.
      expect(numbers.gears[0].gear.profileShift).toBeGreaterThan(numbers.gears[1].gear.profileShift);
    }
  });

  it('all go to the pinion where no balance is asked, as far as its range goes', () => {
    const [pinion, wheel] = shiftsOf(shifted(20, 60, { centreDistance: 61, shiftBalance: 'none' }));
    expect(wheel).toBeCloseTo(0, 9);
    expect(pinion).toBeGreaterThan(0.6);
    const given = shiftsOf(
      shifted(20, 60, {
        centreDistance: 61,
        shiftBalance: 'none',
        pinion: { teeth: 20, profileShift: 0.25 },
      }),
    );
    expect(given[0]).toBe(0.25);
    expect(given[0] + given[1]).toBeCloseTo(pinion + wheel, 9);
    const wheelGiven = shiftsOf(
      shifted(20, 60, { centreDistance: 61, wheel: { teeth: 60, profileShift: 0.5 } }),
    );
    expect(wheelGiven[1]).toBe(0.5);
    expect(wheelGiven[0] + 0.5).toBeCloseTo(pinion + wheel, 9);
  });

  it('differ in a ring by what the distance asks for', () => {
    const spec = ringPairOf(20, 60, { profileShift: 'solve', helix: { form: 'spur' }, centreDistance: 30.6 });
    const [pinion, wheel] = gearsOf(spec).map(({ gear }) => gear);
    expect(centreDistance(pinion, wheel)).toBeCloseTo(30.6, 6);
    expect(wheel.profileShift).toBeGreaterThan(pinion.profileShift);
  });

  it('reach the very end of their range, and no farther', () => {
    const at = (profileShift: number) =>
      shifted(60, 100, { centreDistance: 120, pinion: { teeth: 60, profileShift }, fit: { gap: 0.1 } });
    expect(shiftsOf(at(1))).toEqual([1, expect.closeTo(-1, 9)]);
    const { parameter } = refusalOf(() => trainNumbers(at(1.05)));
    expect(parameter).toBe('centreDistance');
    const ringed = (profileShift: number) =>
      ringPairOf(60, 200, {
        profileShift: 'solve',
        helix: { form: 'spur' },
        centreDistance: 105,
        wheel: { internal: true, teeth: 200, profileShift },
        fit: { gap: 0.1 },
      });
    expect(shiftsOf(ringed(1))).toEqual([expect.closeTo(1, 9), 1]);
    expect(refusalOf(() => trainNumbers(ringed(1.6))).parameter).toBe('centreDistance');
  });
});

describe('a centre distance that no shifts make', () => {
  it.each<[string, (distance: number) => PairSpec, number, number]>([
    ['too far', (centreDistance) => shifted(20, 30, { centreDistance }), 46, 37.5],
    ['too near', (centreDistance) => shifted(20, 30, { centreDistance }), 36, 37.5],
    ['nearer than base circles', (centreDistance) => shifted(20, 30, { centreDistance }), 20, 37.5],
    [
      'too far in a ring',
      (centreDistance) => ringPairOf(20, 60, { profileShift: 'solve', centreDistance }),
      60,
      34.6,
    ],
    [
      'too far for a pinion whose shift is given',
      (centreDistance) => shifted(20, 30, { centreDistance, pinion: { teeth: 20, profileShift: 0.2 } }),
      46,
      37.5,
    ],
  ])('%s is refused with the nearest that some do', (_, make, asked, standard) => {
    const refusal = refusalOf(() => trainNumbers(make(asked)));
    expect(refusal).toMatchObject({ parameter: 'centreDistance', value: asked });
    expect(refusal.nearest).toHaveLength(1);
    const nearest = Number(refusal.nearest[0]);
    const way = Math.sign(nearest - asked);
    expect(way).toBe(Math.sign(standard - asked));
    expect(centreDistance(...(gearsOf(make(nearest)).map(({ gear }) => gear) as [never, never]))).toBeCloseTo(
      nearest,
      6,
    );
    // A hair farther from the standard one than what is offered nothing serves.
    expect(refusalOf(() => trainNumbers(make(nearest - 0.02 * way))).parameter).toBe('centreDistance');
  });

  it('is that of given shifts, or they are said to make another', () => {
    const both = (distance: number) =>
      pairOf(20, 30, {
        centreDistance: distance,
        pinion: { teeth: 20, profileShift: 0.3 },
        wheel: { teeth: 30, profileShift: 0.1 },
      });
    const { parameter, nearest } = refusalOf(() => trainNumbers(both(37.5)));
    expect(parameter).toBe('centreDistance');
    const [made] = nearest as number[];
    const [pinion, wheel] = gearsOf(both(made)).map(({ gear }) => gear);
    expect(centreDistance(pinion, wheel)).toBeCloseTo(made, 3);
    // As far as shifts with six places tell.
    expect(refusalOf(() => trainNumbers(both(made + 3e-4))).parameter).toBe('centreDistance');
  });
});

describe('teeth that cannot be drawn', () => {
  it('are refused by their part, or by the growth that they are set back by', () => {
    const asked = fitTrain(trainNumbers(pairOf(20, 30, { fit: { gap: 0.1 } })));
    const { spec } = asked;
    const grown = { ...asked, spec: { ...spec, printer: { ...spec.printer, growth: 3 } } };
    const refusal = refusalOf(() => fitDrawn(grown));
    expect(refusal).toMatchObject({ parameter: 'printer.growth', value: 3, nearest: [0] });
    expect(refusal.rule).toMatch(/^walls set back by it cannot be drawn: ./);
    expect(fitDrawn({ ...asked, spec: { ...spec, printer: { ...spec.printer, growth: 0 } } })).toBeDefined();
    const numbers = trainNumbers(ringPairOf(20, 60));
    const thick = numbers.gears.map((one) => ({ ...one, relief: one.part === 'wheel' ? 3 : one.relief }));
    const named = refusalOf(() => fitTrain({ ...numbers, gears: thick }));
    expect(named.parameter).not.toMatch(/^ring/);
    expect(named.rule).not.toContain('the ring');
    expect(`${named.parameter} ${named.rule}`).toContain('wheel');
  });
});

describe('roots that are deepened', () => {
  it('of a pinion and its bar are told of both, by what the gap asks beyond the clearance', () => {
    const gap = 0.5;
    const { adjustments } = trainNumbers(rackOf(20, 12, { fit: { gap } }));
    const by = expect.closeTo(gap - 0.25 * 1.5, 9);
    expect(adjustments).toEqual(['pinion', 'bar'].map((part) => ({ part, what: 'roots-deepened', by })));
    expect(trainNumbers(rackOf(20, 12, { fit: { gap: 0.3 } })).adjustments).toEqual([]);
  });

  it('of one gear are told for the mates that it is made for', () => {
    const { adjustments } = trainNumbers(
      gearOf({ internal: true, teeth: 45, mateTeeth: 15 }, { fit: { gap: 0.5 } }),
    );
    expect(adjustments.length).toBeGreaterThan(0);
    for (const one of adjustments) expect(one).toMatchObject({ part: 'gear', mateTeeth: 15 });
  });
});

import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { tipThickness } from '../../lib/tooth/thickness.js';
import { planParameters } from '../../lib/train/planParameters.js';
import { readWanted } from '../../lib/train/readWanted.js';
import { judgeSizes } from '../../lib/train/searchSets.js';
import { shiftedSet } from '../../lib/train/shiftedSet.js';
import { distanceAt } from '../../lib/train/shifts/distance.js';
import { shiftFrame } from '../../lib/train/shifts/frame.js';
import { trialOf } from '../../lib/train/shifts/trial.js';
import { solveShifts } from '../../lib/train/solveShifts.js';
import { unshiftedSets } from '../../lib/train/unshiftedSet.js';
import { gear } from '../tooth/gears.js';

const rack = { addendum: 1, dedendum: 1.25, fillet: 0.38 };

describe('a set with shifts', () => {
  it('is as thick at its tips as the thinner of sun and planets', () => {
    const counts = { sunTeeth: 12, planetTeeth: 20, ringTeeth: 51 };
    const frame = shiftFrame(counts, { rack, pressureAngle: 20, helixAngle: 0 });
    for (const planet of [0, 0.2, 0.4]) {
      const trial = trialOf(frame, distanceAt(frame, frame.unshifted.inner + 0.3), planet);
      const tips = [
        tipThickness(gear(12, { rack, profileShift: trial.sun }), trial.sunTip, 0),
        tipThickness(gear(20, { rack, profileShift: trial.planet }), trial.planetTip, 0),
      ];
      expect(Math.abs(tips[0] - tips[1])).toBeGreaterThan(0.01);
      const set = shiftedSet(frame, trial);
      expect(set.tipAsMade(0)).toBeCloseTo(Math.min(...tips), 9);
      expect(set.shifts).toEqual({ sun: trial.sun, planet: trial.planet, ring: trial.ring });
      expect(set.engagement).toBeGreaterThan(0.5);
    }
  });
});

describe('a row of a plan', () => {
  it('is stated as a file with the rim and the nozzle that were asked, and without where none were', () => {
    const row = {
      ...{ sunTeeth: 15, planetTeeth: 15, ringTeeth: 45, planets: 5, module: 1.5, spacing: 'equal' as const },
      profileShifts: { sun: 0, planet: 0, ring: 0 },
    };
    const of = (more: object) => planParameters(row, readWanted({ module: 1.5, ...more }));
    expect(resolveSpec(of({ rim: 7 })).ring.rim).toBe(7);
    expect(of({}).ring).not.toHaveProperty('rim');
  });
});

describe('a set that misses what is wanted by a little', () => {
  it('misses engagement by its share of the one asked, by too much from a tenth on', () => {
    const set = unshiftedSets(readWanted({ module: 1.5 }))(15, 15);
    const misses = (share: number) => {
      const found: unknown[] = [];
      const wanted = readWanted({ module: 1.5, engagement: set.engagement / (1 - share) });
      judgeSizes(set, 5, null, wanted, ({ miss }) => found.push(miss));
      return found;
    };
    expect(misses(0)).toEqual([null]);
    for (const share of [0.02, 0.05, 0.099])
      expect(misses(share)).toEqual([{ rule: 'engagement', share: expect.closeTo(share, 9) }]);
    expect(misses(0.101)).toEqual([]);
  });
});

describe('what shifts are found for', () => {
  it('is refused by every number that is none of its range', () => {
    const form = { rack, pressureAngle: 20, helixAngle: 0 };
    const problems = (counts: object, more: object) => {
      try {
        solveShifts({ sunTeeth: 20, planetTeeth: 9, ringTeeth: 38, ...counts }, { ...form, ...more });
        return [];
      } catch (error) {
        if (error instanceof Refusal) return error.problems.map(({ parameter, rule }) => [parameter, rule]);
        throw error;
      }
    };
    expect(problems({ sunTeeth: 20.5 }, { pressureAngle: 99 })).toEqual([
      ['sunTeeth', expect.stringMatching(/^must be a whole number from \d+ to \d+$/)],
      ['pressureAngle', expect.stringMatching(/^must be a number from [\d.]+ to [\d.]+$/)],
    ]);
    expect(problems({}, { gap: 9, helixAngle: -3 }).map(([, rule]) => rule)).toEqual(
      Array(2).fill(expect.stringMatching(/^must be a number from \d/)),
    );
    expect(problems({}, { rack: undefined }).map(([parameter]) => parameter)).toEqual([
      'rack.addendum',
      'rack.dedendum',
      'rack.fillet',
    ]);
  });
});

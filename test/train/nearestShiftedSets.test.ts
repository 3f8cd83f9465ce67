import { describe, expect, it } from 'vitest';
import { standardRack } from '../../lib/tooth/racks.js';
import { allowsEqualSpacing } from '../../lib/train/assembly.js';
import { nearestShiftedSets } from '../../lib/train/nearestShiftedSets.js';
import { solveShifts } from '../../lib/train/solveShifts.js';

const form = { rack: standardRack('B', (20 * Math.PI) / 180), pressureAngle: 20, helixAngle: 0, gap: 0.15 };

describe('nearest sets with shifts', () => {
  it('come first with what was asked where that works', () => {
    const asked = { sunTeeth: 15, planetTeeth: 14, ringTeeth: 45, planets: 5 };
    expect(nearestShiftedSets(asked, 3, form)[0]).toEqual(asked);
  });

  it('all assemble and can be solved, no two alike', () => {
    const asked = { sunTeeth: 15, planetTeeth: 10, ringTeeth: 45, planets: 5 };
    const found = nearestShiftedSets(asked, 4, form);
    expect(found).toHaveLength(4);
    expect(new Set(found.map((set) => JSON.stringify(set))).size).toBe(4);
    for (const set of found) {
      expect(allowsEqualSpacing(set.sunTeeth, set.ringTeeth, set.planets)).toBe(true);
      expect(solveShifts(set, form, { neighbourAngle: 360 / set.planets })).not.toHaveProperty('refused');
    }
  });
});

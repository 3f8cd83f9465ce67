import { describe, expect, it } from 'vitest';
import { toothProfile } from '../../lib/tooth/profile.js';
import { leastProfileShift, leastTeeth, straightDepth } from '../../lib/tooth/undercut.js';
import { gear } from './gears.js';

const racks = {
  A: { addendum: 1, dedendum: 1.25, fillet: 0.38 },
  B: { addendum: 1, dedendum: 1.25, fillet: 0.3 },
  sharp: { addendum: 1, dedendum: 1.25, fillet: 0 },
};

describe('the undercut limits foretell what the generated tooth shows', () => {
  it.each(Object.entries(racks))('rack %s: number of teeth', (_, rack) => {
    for (const helixAngle of [0, 30])
      for (let teeth = 8; teeth <= 24; teeth++) {
        const made = gear(teeth, { rack, helixAngle });
        expect(toothProfile(made).undercut, `${teeth} teeth, ${helixAngle}°`).toBe(
          teeth < leastTeeth(made, straightDepth(made)),
        );
      }
  });

  it.each(Object.entries(racks))('rack %s: profile shift', (_, rack) => {
    for (const teeth of [10, 14, 20]) {
      const least = leastProfileShift(gear(teeth, { rack }), straightDepth(gear(teeth, { rack })));
      expect(toothProfile(gear(teeth, { rack, profileShift: least + 1e-6 })).undercut).toBe(false);
      expect(toothProfile(gear(teeth, { rack, profileShift: least - 1e-6 })).undercut).toBe(true);
    }
  });
});

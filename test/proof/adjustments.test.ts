import { describe, expect, it } from 'vitest';
import { sentences } from '../../lib/fit/adjustment.js';
import { stationsLike } from '../../lib/fit/coupon/stations.js';
import { toothAdjustments } from '../../lib/proof/adjustments.js';
import { inspectSet } from '../../lib/proof/proveSet.js';
import { fitSet, outlinesOf } from '../planetarySets.js';
import { setOf } from '../sets.js';
import { gearOf, rackOf } from '../trains.js';

const slide = () => rackOf(18, 29, { helix: { form: 'herringbone', angle: 25 }, fit: { gap: 0.3 } });

describe('adjustments', () => {
  it('list a root that is rounded less than asked, with both figures, and helix-accuracy names the part', () => {
    const { adjustments, checks } = inspectSet(slide());
    // 0.30 modules are asked (ISO 53, profile B), 0.257 are made.
    expect(adjustments).toEqual([
      expect.stringMatching(/roots of the pinion rounded with 0\.38\d mm in place of 0\.450 mm/),
    ]);
    expect(checks.find(({ id }) => id === 'helix-accuracy')!.says).toMatch(
      /that of pinion is the adjusted one/,
    );
  });

  it('are empty where teeth are as the file has them', () => {
    const plain = inspectSet(
      gearOf({ teeth: 30 }, { helix: { form: 'spur' }, fit: { gap: 0.1 }, faceWidth: 4 }),
    );
    expect(plain.adjustments).toEqual([]);
    expect(plain.checks.find(({ id }) => id === 'helix-accuracy')!.says).not.toMatch(/adjusted/);
  });

  it('list rings rounded although sharp roots are asked, and bevels that would leave no flank', () => {
    const spec = setOf(15, 15, 45, 5, {
      rack: { addendum: 1, dedendum: 1.25, fillet: 0 },
      bevel: { size: 1.75, angle: 30 },
      helix: { form: 'spur' },
      sun: { teeth: 15, profileShift: -0.2 },
    });
    const set = fitSet(spec);
    const { asked, drawn } = outlinesOf(spec);
    const says = sentences(toothAdjustments(asked, drawn));
    expect(says.join('\n')).toMatch(/roots of the ring rounded with 0\.030 mm in place of 0\.000 mm/);
    const bevels = (['sun', 'planet', 'ring'] as const).filter(
      (part) => set.ends[part].bevelSize < 1.75 - 5e-4,
    );
    expect(bevels).not.toEqual([]);
    for (const part of bevels)
      expect(says.join('\n')).toContain(
        `bevels of the ${part} ${set.ends[part].bevelSize.toFixed(3)} mm deep`,
      );
  });

  it('list roots that walls standing back round more than asked', () => {
    const rack = { addendum: 1, dedendum: 1.25, fillet: 0.02 };
    const { adjustments } = inspectSet(setOf(16, 20, 56, 4, { rack, printer: { growth: -0.08 } }));
    // Drawn quite sharp, the root comes out rounded by how far its walls stand back.
    expect(adjustments.join('\n')).toMatch(
      /roots of the planet rounded with 0\.080 mm in place of 0\.030 mm/,
    );
  });

  it('of a coupon list its own faces and bevels', () => {
    const { adjustments } = stationsLike(
      setOf(15, 15, 45, 5, { bevel: { size: 1.75, angle: 60 } }),
      [0.1, 0.2],
    );
    expect(adjustments.join('\n')).toMatch(/faces 5\.2 mm wide in place of 20 mm/);
    expect(adjustments.join('\n')).toMatch(/bevels 1\.\d+ mm deep in place of the file's 1\.75 mm/);
  });
});

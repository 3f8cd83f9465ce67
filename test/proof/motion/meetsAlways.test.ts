import { describe, expect, it } from 'vitest';
import type { Motion } from '../../../lib/fit/play/contact.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { looseSetOf } from '../../../lib/proof/motion/looseSetOf.js';
import { meetsAlways } from '../../../lib/proof/motion/meetsAlways.js';
import { distanceAfter } from '../../../lib/proof/motion/movingSet.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { fitted } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

describe('a part moved again and again', () => {
  const spec = setOf(15, 15, 45, 3, {
    faceWidth: 10,
    tolerance: 0.05,
    helix: { form: 'helical', angle: 20 },
  });
  const set = looseSetOf(fitted(spec));
  const trees = new Map(buildSet(spec).map(({ name, mesh }) => [name, triangleTree(mesh)]));
  const moving = { set, trees };
  const turns = (level: number): Motion[] =>
    Array.from({ length: 40 }, (_, i) => [0, 0, level, 0, 0, ((i / 40) * 2 * Math.PI) / 15]);

  // Whole bodies measured at every turn are the yardstick.
  it.each([0, 1, 4, 9.9, 10.5])('meets its mates as whole bodies do, %d mm up', (level) => {
    for (const name of ['sun', 'planet-1']) {
      const whole = turns(level).map((motion) => distanceAfter(moving, { [name]: motion }, 1, set.gap) === 0);
      expect(meetsAlways(moving, name, turns(level))).toBe(whole.every((meets) => meets));
      const meeting = turns(level).filter((_, i) => whole[i]);
      expect(meetsAlways(moving, name, meeting)).toBe(true);
      for (const clear of turns(level)
        .filter((_, i) => !whole[i])
        .slice(0, 3))
        expect(meetsAlways(moving, name, [...meeting, clear])).toBe(false);
    }
  });
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { ranked } from '../../lib/train/ranked.js';

it('keeps what sorting everything and cutting would keep', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 30 })),
      fc.integer({ min: 1, max: 12 }),
      (items, limit) => {
        const list = ranked<number>(limit, (a, b) => a - b);
        for (const item of items) list.offer(item);
        expect(list.kept).toEqual([...items].sort((a, b) => a - b).slice(0, limit));
      },
    ),
  );
});

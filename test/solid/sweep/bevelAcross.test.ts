import { expect, it } from 'vitest';
import { Refusal } from '../../../lib/refusal.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';

/** A ring whose tips come close to the base circle. */
const ring = (profileShift: number, bevel?: object) => () =>
  buildSet(
    resolveSpec({
      kind: 'gear',
      module: 1.5,
      faceWidth: 20,
      gear: { internal: true, teeth: 45, profileShift },
      ...(bevel && { bevel }),
    }),
  );

it.each([-1.8, -1.9, -2, -2.287])(
  'a bevel across generators next to the base circle is refused: shift %d',
  (shift) => {
    expect(ring(shift)).toThrow(Refusal);
    expect(ring(shift)).toThrow(/^bevel\.size: /);
    expect(ring(shift, { size: 0 })).not.toThrow();
  },
);

it('a bevel that runs along with them is made', () => {
  expect(ring(-1.5)).not.toThrow();
});

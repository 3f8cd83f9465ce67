import { describe, expect, it } from 'vitest';
import { gearIn } from '../../lib/fit/train/train.js';
import { buildTrain } from '../../lib/solid/buildTrain.js';
import { fillOutlines } from '../../lib/solid/cap.js';
import type { Mesh } from '../../lib/solid/mesh.js';
import { soundBody } from '../../lib/solid/soundBody.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { Point } from '../../lib/stack/contour.js';
import { fitted } from '../planetarySets.js';
import { refusalOf } from '../refusalOf.js';

const empty: Mesh = { positions: new Float64Array(), triangles: new Uint32Array() };
const square = (x: number, side: number): Point[] => [
  [x, 0],
  [x + side, 0],
  [x + side, side],
  [x, side],
];

/** Two squares, one within the other unless the tolerance is coarse. */
function nested(tolerance: number): Mesh {
  fillOutlines([square(0, 10), square(1 - 100 * tolerance, 3).map(([x, y]): Point => [x, y + 1])]);
  return empty;
}

describe('a body whose outlines cross', () => {
  it('is refused with a tolerance that has been tried', () => {
    expect(soundBody('ring', 0.005, nested)).toBe(empty);
    const { parameter, value, nearest } = refusalOf(() => soundBody('ring', 0.015, nested)).problems[0];
    expect([parameter, value, nearest]).toEqual(['tolerance', 0.015, [0.0075]]);
  });

  it('is refused by the part that it is, where no tolerance helps', () => {
    const spec = resolveSpec({
      kind: 'planetary',
      module: 1,
      faceWidth: 3,
      tolerance: 0.05,
      sun: { teeth: 12 },
      planets: { teeth: 18, count: 4 },
      carrier: {},
    });
    const train = fitted(spec);
    const { tipRadius } = gearIn(train, 'sun').profile;
    const wide = { ...train, carrier: { ...train.carrier!, hubRadius: tipRadius } };
    const { parameter, rule, nearest } = refusalOf(() => buildTrain(wide)).problems[0];
    expect([parameter, nearest]).toEqual(['sun', []]);
    expect(rule).toContain('touch or cross');
  });

  it('any other error is none of its business', () => {
    const fails = () => {
      throw new RangeError('other');
    };
    expect(() => soundBody('ring', 0.01, fails)).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bent, movedX, movedY, movedZ, writeSlopes } from '../../../lib/fit/play/pointMotion.js';
import { addStretchSlopes, stretch, turnAt, writeSliceSlopes } from '../../../lib/fit/play/sliceMotion.js';
import { rotationMatrix } from '../../../lib/proof/rotationMatrix.js';
import { evenly } from '../../evenly.js';

const length = evenly(-20, 20);
const turn = evenly(-0.02, 0.02);
const motion = fc
  .tuple(evenly(-0.5, 0.5), evenly(-0.5, 0.5), evenly(-0.5, 0.5), turn, turn, turn)
  .map((numbers) => Float64Array.of(9, ...numbers));
const vector = fc.tuple(length, length, length);
/** The motion stands after one other number, so that where it begins counts. */
const AT = 1;

/** Where a point goes exactly: turned by the rotation, then shifted. */
function carried(numbers: Float64Array, [x, y, z]: readonly number[]): number[] {
  const [u, v, w, a, b, c] = numbers.subarray(AT);
  const r = rotationMatrix(a, b, c);
  return [u, v, w].map((shift, i) => shift + r[3 * i] * x + r[3 * i + 1] * y + r[3 * i + 2] * z);
}

/** Change of a function for each number of a motion. */
function differences(f: (at: Float64Array) => number, numbers: Float64Array): number[] {
  const step = 1e-5;
  return Array.from({ length: 6 }, (_, k) => {
    const nudged = (by: number) => f(numbers.map((n, j) => (j === AT + k ? n + by : n)));
    return (nudged(step) - nudged(-step)) / (2 * step);
  });
}

function expectClose(found: ArrayLike<number>, expected: readonly number[]): void {
  for (const [k, number] of expected.entries())
    expect(Math.abs(found[k] - number), String(k)).toBeLessThan(1e-5 * (1 + Math.abs(number)));
}

describe('a point of a moved part', () => {
  it('goes where the rotation takes it, to the second order of the turn', () => {
    fc.assert(
      fc.property(motion, vector, (numbers, at) => {
        const [x, y, z] = at;
        const exact = carried(numbers, at);
        const second = [
          x + movedX(numbers, AT, y, z) + bent(numbers, AT, x, y, z, 1, 0, 0),
          y + movedY(numbers, AT, x, z) + bent(numbers, AT, x, y, z, 0, 1, 0),
          z + movedZ(numbers, AT, x, y) + bent(numbers, AT, x, y, z, 0, 0, 1),
        ];
        const angle = Math.hypot(numbers[4], numbers[5], numbers[6]);
        const left = (angle ** 3 / 6) * Math.hypot(x, y, z) + 1e-12;
        for (let i = 0; i < 3; i++) expect(Math.abs(second[i] - exact[i])).toBeLessThanOrEqual(left);
      }),
    );
  });

  it('bends along a slanted direction as along its components', () => {
    fc.assert(
      fc.property(motion, vector, vector, (numbers, [x, y, z], [nx, ny, nz]) => {
        const along = (a: number, b: number, c: number) => bent(numbers, AT, x, y, z, a, b, c);
        const sum = nx * along(1, 0, 0) + ny * along(0, 1, 0) + nz * along(0, 0, 1);
        expect(along(nx, ny, nz)).toBeCloseTo(sum, 9);
      }),
    );
  });

  it('has the slopes of its motion', () => {
    fc.assert(
      fc.property(motion, vector, vector, (numbers, [x, y, z], [nx, ny, nz]) => {
        const slopes = new Float64Array(7);
        writeSlopes(slopes, AT, nx, ny, nz, x, y, z);
        const moved = (at: Float64Array) =>
          nx * movedX(at, AT, y, z) + ny * movedY(at, AT, x, z) + nz * movedZ(at, AT, x, y);
        expectClose(slopes.subarray(AT), differences(moved, numbers));
      }),
    );
  });
});

describe('an outline in a slice', () => {
  it('stretches along the lean as a circle does that is seen aslant: 1 / cos to the second order', () => {
    fc.assert(
      fc.property(motion, length, length, (numbers, x, y) => {
        const [leanX, leanY] = [numbers[5], -numbers[4]];
        const lean = Math.hypot(leanX, leanY);
        if (lean < 1e-4) return;
        const [ex, ey] = [leanX / lean, leanY / lean];
        const along = x * ex + y * ey;
        expect(stretch(numbers, AT, x, y, ex, ey)).toBeCloseTo(along * (1 / Math.cos(lean) - 1), 5);
        expect(stretch(numbers, AT, x, y, -ey, ex)).toBeCloseTo(0, 12);
      }),
    );
  });

  it('has the slopes of its stretch, of either sign', () => {
    fc.assert(
      fc.property(motion, length, length, evenly(-1, 1), evenly(-1, 1), (numbers, x, y, nx, ny) => {
        for (const sign of [1, -1] as const) {
          const slopes = new Float64Array(7);
          addStretchSlopes(slopes, AT, numbers, AT, x, y, nx, ny, sign);
          expectClose(
            slopes.subarray(AT),
            differences((at) => sign * stretch(at, AT, x, y, nx, ny), numbers),
          );
        }
      }),
    );
  });

  it('has the slopes of its shift and of its turn, which a helix adds to as it rises', () => {
    fc.assert(
      fc.property(
        motion,
        vector,
        turn,
        evenly(-1, 1),
        evenly(-1, 1),
        (numbers, [x, y, height], twist, nx, ny) => {
          const perTurn = 3.7;
          const slopes = new Float64Array(7);
          writeSliceSlopes(slopes, AT, nx, ny, perTurn, twist, height, x, y);
          const gap = (at: Float64Array) =>
            // A point of the axis at that height: only what leans carries it, its turn is in the outline's.
            nx * (at[1] + at[5] * height) +
            ny * (at[2] - at[4] * height) +
            perTurn * turnAt(at, AT, twist, x, y);
          expectClose(slopes.subarray(AT), differences(gap, numbers));
        },
      ),
    );
  });
});

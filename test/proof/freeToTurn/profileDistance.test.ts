// Distances over every turn, held against bodies that are turned and measured one turn after the other.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINE, profileDistance } from '../../../lib/proof/freeToTurn/profileDistance.js';
import { profileTree } from '../../../lib/proof/freeToTurn/profileTree.js';
import { leastDistance } from '../../../lib/proof/mesh/leastDistance.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { movedTree } from '../../../lib/proof/motion/movedTree.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { panelPiece } from '../../../lib/solid/panel.js';
import { evenly } from '../../evenly.js';
import '../../seed.js';

/** A box of some size, leaning about x and turned about z. */
function box(size: readonly number[], centre: readonly number[], turn: number, lean: number): Mesh {
  const corners = Array.from({ length: 8 }, (_, i) =>
    [i & 1, (i >> 1) & 1, i >> 2].map((bit, k) => (bit - 0.5) * size[k]),
  );
  const positions = Float64Array.from(
    corners.flatMap(([x, y, z]) => {
      const [v, w] = [y * Math.cos(lean) - z * Math.sin(lean), y * Math.sin(lean) + z * Math.cos(lean)];
      const [p, q] = [x * Math.cos(turn) - v * Math.sin(turn), x * Math.sin(turn) + v * Math.cos(turn)];
      return [p + centre[0], q + centre[1], w + centre[2]];
    }),
  );
  const faces = [0, 2, 3, 1, 4, 5, 7, 6, 0, 1, 5, 4, 2, 6, 7, 3, 0, 4, 6, 2, 1, 3, 7, 5];
  const triangles: number[] = [];
  for (let f = 0; f < 24; f += 4)
    triangles.push(faces[f], faces[f + 1], faces[f + 2], faces[f], faces[f + 2], faces[f + 3]);
  return { positions, triangles: Uint32Array.from(triangles) };
}

const side = evenly(0.5, 6);
const place = evenly(-8, 8);
const angle = evenly(-Math.PI, Math.PI);
const body = fc.record({
  size: fc.tuple(side, side, side),
  centre: fc.tuple(place, place, place),
  turn: angle,
  lean: angle,
});

describe('the distance over every turn', () => {
  it('is what turning one body round the other’s axis comes down to', () => {
    const STEPS = 240;
    fc.assert(
      fc.property(body, body, (a, b) => {
        const [one, two] = [a, b].map(({ size, centre, turn, lean }) =>
          triangleTree(box(size, centre, turn, lean)),
        );
        // One within the other's solid is found by whoever asks for the distance as they lie.
        fc.pre(leastDistance(one, two, 50)!.distance > 0);
        const found = profileDistance(profileTree(one, [0, 0]), profileTree(two, [0, 0]), 0, 50)!.distance;
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i < STEPS; i++) {
          const turned = movedTree(one, [0, 0, 0, 0, 0, (2 * Math.PI * i) / STEPS], [0, 0, 0]);
          least = Math.min(least, leastDistance(turned, two, 50)!.distance);
        }
        // No turn comes nearer; the nearest of the turns tried is off by less than half a step of the farthest corner.
        expect(found).toBeLessThanOrEqual(least + FINE);
        expect(found).toBeGreaterThanOrEqual(least - (Math.PI / STEPS) * 17 - FINE);
      }),
      { numRuns: 60 },
    );
  });

  it('is no more than what any turns of two bodies about two axes come to', () => {
    fc.assert(
      fc.property(
        body,
        body,
        evenly(0.1, 30),
        fc.array(fc.tuple(angle, angle), { minLength: 40, maxLength: 40 }),
        (a, b, apart, turns) => {
          const one = triangleTree(box(a.size, a.centre, a.turn, a.lean));
          const two = triangleTree(
            box(b.size, [b.centre[0] + apart, b.centre[1], b.centre[2]], b.turn, b.lean),
          );
          const found = profileDistance(
            profileTree(one, [0, 0]),
            profileTree(two, [apart, 0]),
            apart,
            80,
          )!.distance;
          fc.pre(leastDistance(one, two, 80)!.distance > 0);
          for (const [p, q] of turns) {
            const turned = leastDistance(
              movedTree(one, [0, 0, 0, 0, 0, p], [0, 0, 0]),
              movedTree(two, [0, 0, 0, 0, 0, q], [apart, 0, 0]),
              80,
            );
            expect(found).toBeLessThanOrEqual(turned!.distance + FINE);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is known in closed form', () => {
    // A cube of side 2 with its middle 10 mm off the axis and a round hole: its corner is at √(11² + 1).
    const cube = profileTree(triangleTree(box([2, 2, 2], [10, 0, 0], 0, 0)), [0, 0]);
    const hole = profileTree(triangleTree(panelPiece(30, 20, -1, 2)), [0, 0]);
    expect(profileDistance(cube, hole, 0, 9)!.distance).toBeCloseTo(15 - Math.hypot(11, 1), 3);
    // Two of them on axes 25 mm apart face each other with their corners.
    const other = profileTree(triangleTree(box([2, 2, 2], [25, 10, 0], 0, 0)), [25, 0]);
    expect(profileDistance(cube, other, 25, 9)!.distance).toBeCloseTo(25 - 2 * Math.hypot(11, 1), 3);
    // A bar that slides past at y = −14 … −13.
    const bar = profileTree(triangleTree(box([40, 1, 2], [0, -13.5, 0], 0, 0)), 'slide');
    expect(profileDistance(cube, bar, 0, 9)!.distance).toBeCloseTo(13 - Math.hypot(11, 1), 3);
    expect(profileDistance(cube, bar, 0, 1)).toBeNull();
  });
});

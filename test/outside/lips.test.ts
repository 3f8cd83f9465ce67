import type { ManifoldToplevel, Mat4 } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { axialBounds } from '../../lib/fit/play/axialBounds.js';
import type { Motion } from '../../lib/fit/play/contact.js';
import { setPlay } from '../../lib/fit/play/setPlay.js';
import { triangleTree } from '../../lib/proof/mesh/triangleTree.js';
import { looseSetOf } from '../../lib/proof/motion/looseSetOf.js';
import { distanceAfter } from '../../lib/proof/motion/movingSet.js';
import { rotationMatrix } from '../../lib/proof/rotationMatrix.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { fitted } from '../planetarySets.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/**
 * What lips leave of play along the axis, held against a free random search over all six numbers of a motion on the
 * finished meshes: it must never come past the bound. The farthest place it reaches is shown clear, and motions at
 * the bound are shown to overlap, by the general-purpose kernel manifold-3d.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

/** Numbers from 0 to 1, the same in every run (a linear congruence, Numerical Recipes' constants from memory). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

function bodies(spec: PlanetarySpec) {
  const set = looseSetOf(fitted(spec));
  const parts = buildSet(spec);
  const trees = new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
  return { set, parts, trees };
}

/** The highest rise of a part that a random climb from rest finds, and the motion. */
function climbed({ set, trees }: ReturnType<typeof bodies>, part: string, tries: number): Motion {
  const random = randomFrom(7);
  const off = () => random() + random() + random() - 1.5;
  const planets = new Set(set.planets.map(({ name }) => name));
  const inMesh = (a: string, b: string) => !(planets.has(a) && planets.has(b));
  const clear = (motion: Motion) => distanceAfter({ set, trees }, { [part]: motion }, 1, 1e-6, inMesh) > 0;
  let best: Motion = [0, 0, 0, 0, 0, 0];
  let size = set.gap / 2;
  for (let i = 0, misses = 0; i < tries; i++) {
    const moved = best.map((x, k) => x + off() * size * (k < 3 ? 1 : 0.08));
    moved[2] = best[2] + Math.abs(off()) * size * 0.4;
    const [x, y, z, a, b, c] = moved;
    if (clear([x, y, z, a, b, c])) [best, size, misses] = [[x, y, z, a, b, c], 1.3 * size, 0];
    else if (++misses % 12 === 0) size = size < 1e-3 ? set.gap / 3 : 0.75 * size;
  }
  return best;
}

/** What the first planet, or the sun, shares with its mates once it has moved, mm³, by the kernel. */
function shared({ set, parts }: ReturnType<typeof bodies>, part: string) {
  const named = (name: string) => kernelBody(kernel, parts.find((one) => one.name === name)!.mesh);
  const mates = part === 'sun' ? set.planets.map(({ name }) => named(name)) : [named('sun'), named('ring')];
  const own = named(part);
  const [cx, cy] = part === 'sun' ? [0, 0] : set.planets[0].centre;
  const middle = set.faceWidth / 2;
  return ([x, y, z, a, b, c]: Motion) => {
    const r = rotationMatrix(a, b, c);
    const turn = [r[0], r[3], r[6], 0, r[1], r[4], r[7], 0, r[2], r[5], r[8], 0, 0, 0, 0, 1] as Mat4;
    const moved = own
      .translate([-cx, -cy, -middle])
      .transform(turn)
      .translate([cx + x, cy + y, middle + z]);
    return mates.reduce((sum, mate) => sum + moved.intersect(mate).volume(), 0);
  };
}

const sets: [string, PlanetarySpec][] = [
  [
    'spur 15/15 × 4',
    setOf(15, 15, 45, 4, { module: 2, faceWidth: 14, helix: { form: 'spur' }, retention: 'lips' }),
  ],
  ['herringbone 18/18 × 3', setOf(18, 18, 54, 3, { faceWidth: 12, helix: { angle: 20 }, retention: 'both' })],
  [
    'helical 18/18 × 3',
    setOf(18, 18, 54, 3, { faceWidth: 12, helix: { form: 'helical', angle: 18 }, retention: 'lips' }),
  ],
];

describe('play that lips leave', () => {
  it.each(sets)(
    'of %s is bounded: no motion found on the meshes comes past, and it is not twice as far',
    (_, spec) => {
      const moving = bodies(spec);
      const bounds = axialBounds(moving.set)!;
      const play = setPlay(moving.set);
      for (const part of ['planet', 'sun'] as const) {
        const name = part === 'sun' ? 'sun' : 'planet-1';
        const bound = bounds[part].up;
        const found = play[part].up.value;
        const best = climbed(moving, name, 150);
        const overlap = shared(moving, name);
        expect(overlap(best), 'the place reached is clear').toBeLessThan(1e-6);
        expect(best[2]).toBeLessThan(bound);
        expect(found).toBeLessThan(bound);
        // What is said to be found is not much less than what is reached, and the bound is not far off either.
        expect(found).toBeGreaterThan(0.93 * best[2]);
        expect(bound).toBeLessThan(2 * Math.max(found, best[2]));
        const random = randomFrom(11);
        for (let i = 0; i < 25; i++) {
          const off = (size: number) => size * (2 * random() - 1);
          const motion: Motion = [
            off(0.3),
            off(0.3),
            bound * (1 + random()),
            off(0.06),
            off(0.06),
            off(0.03),
          ];
          expect(overlap(motion), motion.join()).toBeGreaterThan(0);
        }
      }
    },
  );

  it('is not bounded where there are no lips', () => {
    const spec = setOf(15, 15, 45, 5);
    expect(axialBounds(looseSetOf(fitted(spec)))).toBeNull();
  });
});

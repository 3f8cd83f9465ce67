// Pairs and racks by the linear programs, against the closed forms of ISO 21771.
import { describe, expect, it } from 'vitest';
import { type MeshPlay, meshPlay } from '../../../lib/fit/play/meshPlay.js';
import { looseMeshOf } from '../../../lib/proof/motion/looseSetOf.js';
import { proveSet } from '../../../lib/proof/proveSet.js';
import type { TrainSpec } from '../../../lib/spec/types.js';
import { gearSizes } from '../../../lib/tooth/gear.js';
import { inverseInvolute, involute } from '../../../lib/tooth/involute.js';
import { fitted } from '../../planetarySets.js';
import { pairOf, rackOf, ringPairOf } from '../../trains.js';

/** So little gap that flanks alone hold, and no bevels, so that they do so over the whole face. */
const GAP = 0.05;
const plain = { fit: { gap: GAP }, bevel: { size: 0 }, faceWidth: 10 };
/** Low tips over deep, sharp roots: nothing but flanks can bind. */
const roomy = { rack: { addendum: 0.8, dedendum: 1.4, fillet: 0 } };
const spur = { ...plain, helix: { form: 'spur' } };

function played(spec: TrainSpec): {
  play: MeshPlay;
  sizes: ReturnType<typeof gearSizes>;
  train: ReturnType<typeof fitted>;
} {
  const train = fitted(spec);
  return { play: meshPlay(looseMeshOf(train)), sizes: gearSizes(train.gears[0].gear), train };
}
const near = (found: number, wanted: number, share = 0.005) =>
  expect(Math.abs(found / wanted - 1)).toBeLessThan(share);

describe('along the shaft', () => {
  it.each([
    ['a pair', pairOf(14, 30, plain)],
    ['a pair in a ring', ringPairOf(14, 45, plain)],
    ['a rack', rackOf(18, 12, plain)],
  ])('%s with herringbone teeth stops after gap / sin β_b', (_, spec) => {
    const { play, sizes } = played(spec);
    for (const { worst } of [play.up, play.down]) near(worst, GAP / Math.sin(sizes.baseHelixAngle), 0.01);
  });

  it.each([
    ['spur', pairOf(14, 30, spur)],
    ['helical', rackOf(18, 12, { ...plain, helix: { form: 'helical', angle: 20 } })],
  ])('%s teeth hold nothing', (_, spec) => {
    const { play } = played(spec);
    expect([play.up.worst, play.down.worst]).toEqual([Infinity, Infinity]);
  });
});

describe('the mate', () => {
  it.each([
    ['a wheel', pairOf(14, 30, plain)],
    ['a ring', ringPairOf(14, 45, plain)],
  ])('%s turns by gap / (cos β_b r_b): both flanks lie on the line of action', (_, spec) => {
    const { play, sizes, train } = played(spec);
    const { baseRadius } = gearSizes(train.gears[1].gear);
    near(play.mate.worst, GAP / Math.cos(sizes.baseHelixAngle) / baseRadius);
  });

  it('a bar goes gap / (cos β_b cos α_t) along', () => {
    const { play, sizes } = played(rackOf(18, 12, plain));
    const along = GAP / Math.cos(sizes.baseHelixAngle) / Math.cos(sizes.transversePressureAngle);
    near(play.mate.worst, along);
  });
});

describe('a shaft', () => {
  // The centre distance at which the backlash is gone: g_t = (r_b2 ± r_b1)(inv α' − inv α).
  it.each([
    ['a wheel', pairOf(20, 40, { ...spur, ...roomy }), 1],
    ['a ring', ringPairOf(20, 60, { ...spur, ...roomy }), -1],
  ] as const)('nearer to %s binds where backlash ends', (_, spec, inward) => {
    const { play, train } = played(spec);
    const { pair } = train.meshes[0];
    const { baseRadius1, baseRadius2, workingPressureAngle, centreDistance } = pair!;
    const bases = baseRadius2 + inward * baseRadius1;
    const angle = inverseInvolute(involute(workingPressureAngle) - (inward * GAP) / bases);
    near(play.nearer.worst, Math.abs(bases / Math.cos(angle) - centreDistance), 0.01);
  });

  it('nearer to a bar binds after gap / (cos β_b sin α_t)', () => {
    const { play, sizes } = played(rackOf(24, 12, { ...plain, ...roomy }));
    const way = GAP / Math.cos(sizes.baseHelixAngle) / Math.sin(sizes.transversePressureAngle);
    near(play.nearer.worst, way, 0.01);
  });

  it('leans, in the plane of the axes, until an end of the face is as much nearer', () => {
    const loose = { ...spur, ...roomy };
    for (const spec of [pairOf(20, 40, loose), rackOf(24, 12, loose)]) {
      const { play } = played(spec);
      // A leaning gear shows its outline longer by half the square of the lean, which takes a little of the gap.
      near(play.inPlane.worst, (2 * play.nearer.worst) / spec.faceWidth, 0.05);
    }
  });

  it('leans farther where its teeth have more room, and less in a wider face', () => {
    const lean = (more: object) => played(pairOf(20, 40, { ...spur, ...more })).play.outOfPlane.worst;
    expect(lean({ fit: { gap: 0.1 } })).toBeGreaterThan(1.9 * lean({}));
    expect(lean({ faceWidth: 20 })).toBeLessThan(0.55 * lean({}));
  });
});

it.each([
  ['a pair', pairOf(14, 30, { faceWidth: 12 })],
  ['a pair in a ring', ringPairOf(14, 45, { faceWidth: 12 })],
  ['a rack', rackOf(18, 12, { faceWidth: 12 })],
])('the meshes of %s bear it out', (_, spec) => {
  const play = proveSet(spec).sheet.play!;
  expect(play.confirmed.map(({ motion }) => motion)).toHaveLength(6);
  for (const { motion, clear, meets } of play.confirmed) {
    expect(clear, motion).toBe(true);
    expect(meets, motion).not.toBe(false);
  }
});

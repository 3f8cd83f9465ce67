import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/**
 * Whether a part can leave along the axis, shown by the general-purpose kernel manifold-3d on the bodies alone: they
 * are moved apart step by step and what they overlap by is measured. The library's own answer is not used.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const TEETH = 15;
const PITCH = 360 / TEETH;
const FACE = 12;
const set = (form: string, hand = 'right') =>
  setOf(15, 15, 45, 5, {
    helix: { form, angle: form === 'spur' ? 0 : 30, hand },
    faceWidth: FACE,
    tolerance: 0.03,
    fit: { gap: 0.25 },
  });

/** Turn in degrees for one mm of rise of the planet's own helix: 360° over the lead π d / tan β (ISO 21771). */
const perRise = (hand: 'right' | 'left') =>
  ((hand === 'right' ? 1 : -1) * 360 * Math.tan(Math.PI / 6)) /
  ((Math.PI * TEETH * 1.5) / Math.cos(Math.PI / 6));

/** Volume that the first planet shares with sun and ring when raised by `rise` and turned about its own axis, mm³. */
function overlap(spec: PlanetarySpec): (rise: number, turn: number) => number {
  const parts = buildSet(spec);
  const named = (name: string) => kernelBody(kernel, parts.find((part) => part.name === name)!.mesh);
  const mates: Manifold[] = [named('sun'), named('ring')];
  const planet = named('planet-1');
  const axis = (1.5 * TEETH) / Math.cos((spec.helix.angle * Math.PI) / 180);
  return (rise, turn) => {
    const moved = planet.translate([-axis, 0, 0]).rotate([0, 0, turn]).translate([axis, 0, rise]);
    return mates.reduce((sum, mate) => sum + moved.intersect(mate).volume(), 0);
  };
}

describe('herringbone planets', () => {
  it.each([1, -1])('meet sun or ring at a level on their way, whatever their turn (way %d)', (way) => {
    const shared = overlap(set('herringbone'));
    const turns = 24;
    for (const level of [1, 2])
      for (let i = 0; i < turns; i++)
        expect(shared(way * level, (i * PITCH) / turns), `${level} mm, turn ${i}`).toBeGreaterThan(0.5);
  });

  it('are free in the play that they have', () => {
    const shared = overlap(set('herringbone'));
    for (const rise of [-0.5, -0.25, 0, 0.25, 0.5]) expect(shared(rise, 0)).toBe(0);
  });
});

describe('planets that slide or screw out', () => {
  const way = [0, 0.1, 0.25, 0.5, 0.75, 1].map((share) => share * (FACE + 1));

  it('spur: straight up and down', () => {
    const shared = overlap(set('spur'));
    for (const rise of way) for (const sign of [1, -1]) expect(shared(sign * rise, 0)).toBe(0);
  });

  it.each(['right', 'left'] as const)('helical: turning with the helix, sun of %s hand', (hand) => {
    const shared = overlap(set('helical', hand));
    const turn = perRise(hand === 'right' ? 'left' : 'right');
    for (const rise of way)
      for (const sign of [1, -1]) expect(shared(sign * rise, sign * rise * turn)).toBe(0);
    expect(shared(2, 0)).toBeGreaterThan(0.5);
  });
});

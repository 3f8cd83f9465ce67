import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildSet } from '../../lib/solid/buildSet.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/**
 * Carriers and lips against the general-purpose kernel manifold-3d, which measures on the bodies alone: sound, of the
 * expected genus, as far from every gear as asked, and holding what they are to hold.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const FACE = 8;
const LAYER = 0.2;
const set = (carrier: object | 'none', more: object = {}) =>
  setOf(15, 15, 45, 3, { faceWidth: FACE, tolerance: 0.03, carrier, ...more });
const named = (spec: ReturnType<typeof set>) => {
  const parts = buildSet(spec);
  return (name: string) => kernelBody(kernel, parts.find((part) => part.name === name)!.mesh);
};

describe('a carrier', () => {
  const gap = 0.3;
  const axial = 2 * LAYER;
  // Genus by counting handles: a plate with an opening has one, every further column between two plates adds one.
  it.each([
    ['pins below', { plates: 'below', gap }, 1, gap, gap],
    ['waisted pins above', { plates: 'above', gap, pin: { form: 'waisted', diameter: 8 } }, 1, gap, axial],
    [
      'barrelled pins between both, hexagon, bolted',
      {
        plates: 'both',
        gap,
        pin: { form: 'barrelled', diameter: 8 },
        boss: { shape: 'hexagon', acrossFlats: 12, height: 4 },
        bolts: { diameter: 3 },
      },
      // Lower opening, three pins (the first one only joins), three bolt holes.
      1 + 2 + 3,
      gap,
      gap,
    ],
    ['a cage between both', { plates: 'both', form: 'cage', gap }, 1 + 1 + 2, gap, gap],
  ])('%s', (_, carrier, genus, toPlanet, toGears) => {
    const body = named(set(carrier));
    const own = body('carrier');
    expect(own.status()).toBe('NoError');
    expect(own.genus()).toBe(genus);
    const near = (gear: string, asked: number) => {
      const measured = own.minGap(body(gear), 2);
      expect(measured, gear).toBeGreaterThanOrEqual(asked - 0.03);
      expect(measured, gear).toBeLessThanOrEqual(asked + 0.03);
    };
    for (const planet of ['planet-1', 'planet-2', 'planet-3']) near(planet, toPlanet);
    near('sun', toGears);
    if (toGears === gap) near('ring', toGears);
    expect(
      Math.min(...['sun', 'planet-1', 'ring', 'carrier'].map((name) => body(name).boundingBox().min[2])),
    ).toBe(0);
  });

  it('leaves whole layers between its plates and the gears', () => {
    const body = named(set({ plates: 'both', axialGap: 2 }));
    const planet = body('planet-1').boundingBox();
    const { min, max } = body('carrier').boundingBox();
    expect(planet.min[2]).toBeCloseTo(3 + 2 * LAYER, 5);
    expect(max[2] - planet.max[2]).toBeCloseTo(3 + 2 * LAYER, 5);
    expect(min[2]).toBe(0);
  });
});

describe('what holds along the axis', () => {
  /** Volume that a part shares with others when it is raised and, for a planet, turned about its own axis, mm³. */
  const overlap = (spec: ReturnType<typeof set>, part: string, others: string[]) => {
    const body = named(spec);
    const moving = body(part);
    const mates = others.map(body);
    const axis = part === 'planet-1' ? 22.5 : 0;
    return (rise: number, turn = 0) => {
      const moved = moving.translate([-axis, 0, 0]).rotate([0, 0, turn]).translate([axis, 0, rise]);
      return mates.reduce((sum, mate) => sum + moved.intersect(mate).volume(), 0);
    };
  };
  const spur = (more: object) => set('none', { helix: { form: 'spur' }, ...more });

  it('lips stop a planet of a spur set at a level that it must pass, whatever its turn', () => {
    const shared = overlap(spur({ retention: 'lips' }), 'planet-1', ['sun', 'ring']);
    expect(shared(0)).toBe(0);
    for (const way of [1, -1])
      for (let i = 0; i < 24; i++) expect(shared(way * 1.2, i), `${way}, turn ${i}`).toBeGreaterThan(0.05);
    const bare = overlap(spur({}), 'planet-1', ['sun', 'ring']);
    for (const rise of [1.2, -1.2, FACE / 2, FACE + 1]) expect(bare(rise)).toBe(0);
  });

  it('waisted pins stop a planet of a spur set, straight ones do not', () => {
    const held = (form: string) =>
      overlap(spur({ carrier: { plates: 'below', pin: { form, diameter: 8 } } }), 'planet-1', ['carrier']);
    const waisted = held('waisted');
    expect(waisted(0)).toBe(0);
    for (const turn of [0, 40, 80]) expect(waisted(0.6, turn)).toBeGreaterThan(0.05);
    const straight = held('straight');
    for (const rise of [0, 0.6, FACE + 1]) expect(straight(rise)).toBe(0);
  });
});

import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { meshBounds } from '../../../lib/proof/mesh/volume.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { loopsAt, startKernel } from '../../outside/kernel.js';
import { setOf } from '../../sets.js';
import { gearOf } from '../../trains.js';

/**
 * Features as calipers would find them on the body, cut by the general-purpose kernel manifold-3d: widths, depths and
 * places as the file has them. Faces are 12 mm (gears) and 20 mm (sets) apart.
 */

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await startKernel();
});

const fine = { tolerance: 0.002, helix: { form: 'spur' } };
const gear = (features: object, more: object = {}): Mesh =>
  buildSet(gearOf({ teeth: 40, ...features }, { ...fine, ...more }))[0].mesh;
/** Width across the corners (or diameter), and across flats, of the hole about the axis at a height; null for none. */
const holeAt = (mesh: Mesh, height: number) => {
  const hole = loopsAt(kernel, mesh, height).find(
    ({ area, centre }) => area < 0 && Math.hypot(...centre) < 1e-3,
  );
  return hole ? { area: -hole.area, across: 2 * hole.most } : null;
};
const disc = (diameter: number) => (Math.PI * diameter ** 2) / 4;
const hexagon = (acrossFlats: number) => (Math.sqrt(3) / 2) * acrossFlats ** 2;

describe('on a gear', () => {
  // ISO 273: medium clearance holes 4.5 for M4 and 3.4 for M3. ISO 10642: a head of M4 is 8.96 wide in theory, at 90°.
  it('a screw’s hole widens to its head at 45° at the face that is named', () => {
    const mesh = gear({ screw: { size: 'M4', countersink: 'bottom' } });
    expect(holeAt(mesh, 1e-6)!.across).toBeCloseTo(8.96, 3);
    expect(holeAt(mesh, 1)!.across).toBeCloseTo(6.96, 3);
    for (const height of [2.3, 6, 11.999]) expect(holeAt(mesh, height)!.across).toBeCloseTo(4.5, 3);
    const above = gear({ screw: { size: 'M4', countersink: 'top', headDiameter: 9.4 } });
    expect(holeAt(above, 12 - 1e-6)!.across).toBeCloseTo(9.4, 3);
    expect(holeAt(above, 11)!.across).toBeCloseTo(7.4, 3);
    expect(holeAt(above, 1)!.across).toBeCloseTo(4.5, 3);
  });

  // ISO 4032: a nut of M3 is at most 5.5 across flats and 2.4 high; 0.2 mm of room are common practice, no source.
  it('a nut’s pocket is as wide and deep as the nut, with room', () => {
    const nut = { size: 'M3', at: 'top', clearance: 0.2 };
    const mesh = gear({ nut });
    for (const height of [11.9, 12 - 2.6 + 1e-6])
      expect(holeAt(mesh, height)!.area).toBeCloseTo(hexagon(5.7), 4);
    expect(holeAt(mesh, 12 - 2.6 - 1e-6)!.across).toBeCloseTo(3.4, 3);
    const below = gear({ nut: { ...nut, at: 'bottom' } });
    for (const height of [0.1, 2.6 - 1e-6]) expect(holeAt(below, height)!.area).toBeCloseTo(hexagon(5.7), 4);
    // Then a cone at 45° from the corners of the pocket to the hole.
    const cone = 5.7 / Math.sqrt(3) - 1.7;
    expect(holeAt(below, 2.6 + cone - 0.01)!.across).toBeCloseTo(3.42, 1);
    expect(holeAt(below, 2.6 + cone + 0.01)!.across).toBeCloseTo(3.4, 3);
  });

  it('a knob is as wide and high as asked, its edge taken off by a millimetre', () => {
    const mesh = gear({ knob: { diameter: 20, height: 9, grips: 0 } });
    expect(meshBounds(mesh).max[2]).toBeCloseTo(12 + 9, 9);
    const width = (height: number) => 2 * loopsAt(kernel, mesh, height)[0].most;
    expect(width(12.1)).toBeCloseTo(20, 2);
    expect(width(19.9)).toBeCloseTo(20, 2);
    expect(width(20.5)).toBeCloseTo(19, 2);
  });

  it('a crank’s pit has room around the peg and is as deep as asked', () => {
    const crank = { shape: 'square', acrossFlats: 8, clearance: 0.3, depth: 7 };
    const mesh = gear({ crank });
    expect(holeAt(mesh, 11.9)!.area).toBeCloseTo(8.3 ** 2, 4);
    expect(holeAt(mesh, 5.001)!.area).toBeCloseTo(8.3 ** 2, 4);
    expect(holeAt(mesh, 4.999)).toBeNull();
  });

  it('letters stand out, or are sunk, by their height', () => {
    const text = { content: 'H', size: 6, height: 0.6 };
    expect(meshBounds(gear({ text: { ...text, style: 'raised' } })).max[2]).toBeCloseTo(12.6, 9);
    const sunk = gear({ text: { ...text, style: 'sunk' } });
    expect(meshBounds(sunk).max[2]).toBe(12);
    const holes = (height: number) => loopsAt(kernel, sunk, height).filter(({ area }) => area < 0).length;
    expect([holes(11.99), holes(11.41), holes(11.39)]).toEqual([1, 1, 0]);
  });
});

describe('on planets', () => {
  const planet = (features: object): Mesh => {
    const spec = setOf(15, 15, 45, 5, { ...fine, planets: { teeth: 15, count: 5, ...features } });
    return buildSet(spec)[1].mesh;
  };
  /** The planet's axis is 22.5 mm from the set's: 30 teeth of module 1.5 over 2. */
  const opening = (mesh: Mesh, height: number) => {
    const hole = loopsAt(kernel, mesh, height).find(({ area }) => area < 0);
    if (hole) expect(Math.hypot(...hole.centre)).toBeCloseTo(22.5, 3);
    return hole ? 2 * hole.most : null;
  };

  it('a hole goes through, a pocket over it to its depth', () => {
    const mesh = planet({ hole: { diameter: 8 }, pocket: { diameter: 13, depth: 3 } });
    for (const height of [0.01, 10, 16.99]) expect(opening(mesh, height)).toBeCloseTo(8, 3);
    for (const height of [17.01, 19.99]) expect(opening(mesh, height)).toBeCloseTo(13, 3);
    const alone = planet({ pocket: { diameter: 13, depth: 3 } });
    expect(opening(alone, 17.01)).toBeCloseTo(13, 3);
    expect(opening(alone, 16.99)).toBeNull();
    expect(opening(planet({ hole: { diameter: 8 } }), 10)).toBeCloseTo(8, 3);
  });

  // A cap of a ball: (w²/4 + h²) / 2h is its radius.
  it('a dimple is the cap of a ball', () => {
    const mesh = planet({ dimple: { diameter: 12, depth: 2.5 } });
    const ball = (36 + 2.5 ** 2) / 5;
    for (const depth of [0.01, 0.5, 1, 2, 2.4]) {
      const width = 2 * Math.sqrt(ball ** 2 - (ball - 2.5 + depth) ** 2);
      expect(Math.abs(opening(mesh, 20 - depth)! - width), `${depth} deep`).toBeLessThan(0.06);
    }
    expect(opening(mesh, 17.49)).toBeNull();
  });
});

describe('on a ring', () => {
  const ringOf = (features: object) => {
    const parts = buildSet(setOf(15, 15, 45, 5, { ...fine, tolerance: 0.01, ring: { rim: 6, ...features } }));
    return parts.filter(({ name }) => /ring/.test(name)).map(({ mesh }) => mesh);
  };
  /** Round holes off the axis: how many, how far out, and how wide. */
  const holes = (mesh: Mesh, height: number) => {
    const found = loopsAt(kernel, mesh, height).filter(
      ({ area, centre }) => area < 0 && Math.hypot(...centre) > 5,
    );
    const out = found.map(({ centre }) => Math.hypot(...centre));
    return {
      count: found.length,
      circle: 2 * Math.min(...out),
      width: 2 * Math.max(...found.map(({ most }) => most)),
    };
  };
  const outside = (mesh: Mesh, height: number) => loopsAt(kernel, mesh, height)[0];

  it('a flange is as wide and thick as asked, above on a cone at 45°', () => {
    const [below] = ringOf({ flange: { diameter: 100, thickness: 4, at: 'bottom' } });
    const body = outside(below, 10).most;
    expect(outside(below, 0.01).most).toBeCloseTo(50, 4);
    expect(outside(below, 3.99).most).toBeCloseTo(50, 4);
    expect(outside(below, 4.01).most).toBeCloseTo(body, 4);
    const [above] = ringOf({ flange: { diameter: 100, thickness: 4, at: 'top' } });
    expect(outside(above, 16.01).most).toBeCloseTo(50, 4);
    expect(outside(above, 15).most).toBeCloseTo(49, 3);
    expect(outside(above, 16 - (50 - body) - 0.01).most).toBeCloseTo(body, 4);
  });

  it('bolts stand on their circle, as many and as wide as asked', () => {
    const [mesh] = ringOf({
      flange: { diameter: 110, thickness: 4, at: 'bottom' },
      bolts: { circle: 100, count: 5, size: 'M5', series: 'coarse' },
    });
    // ISO 273: a coarse clearance hole for M5 is 5.8 mm.
    expect(holes(mesh, 2)).toEqual({
      count: 5,
      circle: expect.closeTo(100, 3),
      width: expect.closeTo(5.8, 1),
    });
    expect(holes(mesh, 5).count).toBe(0);
  });

  it('scallops are as many and as deep as asked', () => {
    const [[plain], [wavy]] = [ringOf({}), ringOf({ grip: { count: 30, depth: 1.5 } })].map((meshes) =>
      meshes.map((mesh) => outside(mesh, 10)),
    );
    expect(wavy.most).toBeCloseTo(plain.most, 4);
    expect(wavy.most - wavy.least).toBeCloseTo(1.5, 2);
  });

  it('a mount leaves its clearance in the panel’s hole and around the body, pockets for the nuts in its clamp', () => {
    const mount = { hole: 96, panel: 12, clearance: 0.5, screws: 6, screw: 'M4' };
    const [ring, clamp] = ringOf({ mount });
    const body = outside(ring, 10).most;
    expect(2 * body).toBeLessThanOrEqual(96 - 2 * 0.5);
    const flange = outside(ring, 0.01).most;
    // ISO 273 and ISO 10642: 4.5 and 8.96 for M4; the circle lets a screw pass beside the hole's edge.
    const screws = holes(ring, 3.9);
    expect(screws).toMatchObject({ count: 6, width: expect.closeTo(4.5, 1) });
    expect(screws.circle - 4.5).toBeGreaterThan(96);
    expect(holes(ring, 0.001).width).toBeCloseTo(8.96, 1);
    const { min, max } = meshBounds(clamp);
    expect(min[2]).toBe(0);
    expect((max[0] - min[0]) / 2).toBeCloseTo(flange, 2);
    const middle = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
    const own = loopsAt(kernel, clamp, 0.5);
    const opening = own[1];
    expect(opening.area).toBeLessThan(0);
    expect(opening.most).toBeCloseTo(body + 0.5, 2);
    const under = own.slice(2).map(({ centre }) => Math.hypot(centre[0] - middle[0], centre[1] - middle[1]));
    expect(under).toHaveLength(6);
    for (const away of under) expect(2 * away).toBeCloseTo(screws.circle, 2);
    // ISO 4032: a nut of M4 is at most 7 across flats and 3.2 high; pockets have 0.2 mm of room, the floor is 2 mm.
    const top = max[2];
    expect(top).toBeCloseTo(3.4 + 2, 9);
    const pockets = (height: number) =>
      loopsAt(kernel, clamp, height)
        .slice(2)
        .map(({ area }) => -area);
    for (const area of pockets(top - 0.01)) expect(area).toBeCloseTo(hexagon(7.2), 4);
    for (const area of pockets(top - 3.39)) expect(area).toBeCloseTo(hexagon(7.2), 4);
    for (const area of pockets(top - 3.41)) expect(area / disc(4.5)).toBeCloseTo(1, 1);
  });
});

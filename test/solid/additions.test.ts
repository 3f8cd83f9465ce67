// What a script joins to parts and cuts from them. Outside checks: closed forms of volumes, and manifold-3d asked
// directly, in 32 bits, without anything of ours between.

import { booleans, primitives, transforms } from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { edgeDefects } from '../../lib/proof/mesh/edges.js';
import { sameTriangles } from '../../lib/proof/mesh/sameTriangles.js';
import { selfIntersections } from '../../lib/proof/mesh/selfIntersection.js';
import { Refusal } from '../../lib/refusal.js';
import type { Additions } from '../../lib/solid/additions.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { fromGeom3, type Geom3 } from '../../lib/solid/geom3.js';
import { loadKernel } from '../../lib/solid/kernel.js';
import type { Mesh, Part } from '../../lib/solid/mesh.js';
import { evenly } from '../evenly.js';
import { kernelBody, startKernel } from '../outside/kernel.js';
import { setOf } from '../sets.js';
import { volumeOf } from '../write/meshes.js';

const small = (more: object = {}) =>
  setOf(12, 12, 36, 4, { faceWidth: 8, tolerance: 0.03, helix: { form: 'herringbone', angle: 20 }, ...more });
const spec = small();
const plain = buildSet(spec);
const meshOf = (parts: readonly Part[], name: string): Mesh => parts.find((part) => part.name === name)!.mesh;
const outerRadius = Math.max(...meshOf(plain, 'ring').positions.filter((_, i) => i % 3 === 0));

/** A column of `n` sides along z: its volume is n/2 r² sin(2π/n) h. */
const column = (radius: number, height: number, center: [number, number, number] = [0, 0, 0]) =>
  primitives.cylinder({ radius, height, center, segments: 32 });
const columnVolume = (radius: number, height: number) => 16 * radius ** 2 * Math.sin(Math.PI / 16) * height;

const eye = booleans.subtract(column(7, 4, [0, outerRadius + 4, 2]), column(3.5, 9, [0, outerRadius + 4, 2]));
const fingerHole = column(3, 40);
const knob = column(4, 5, [0, 0, 10.5]);
const additions: Additions = { join: { ring: eye, sun: [knob] }, cut: { planets: fingerHole } };

describe('joining and cutting', () => {
  test('changes volumes by what closed forms say', async () => {
    const parts = await buildSet(spec, additions);
    expect(parts.map(({ name }) => name)).toEqual(plain.map(({ name }) => name));
    const gained = (name: string) => volumeOf(meshOf(parts, name)) - volumeOf(meshOf(plain, name));
    // The knob stands on the sun's end face, touching it only.
    expect(gained('sun')).toBeCloseTo(columnVolume(4, 5), 6);
    for (const i of [1, 2, 3, 4]) expect(gained(`planet-${i}`)).toBeCloseTo(-columnVolume(3, 8), 6);
    expect(gained('ring')).toBeGreaterThan(100);
  });

  test('leaves every vertex and triangle that no solid reaches as it was, to the last bit', async () => {
    const parts = await buildSet(spec, additions);
    const wholly = (name: string) => sameTriangles(meshOf(plain, name), meshOf(parts, name));
    const { positions, triangles } = meshOf(plain, 'ring');
    const corners = (t: number) => [0, 1, 2].map((k) => 3 * triangles[t + k]);
    // Within the root circle, and not lying in an end face.
    const isTooth = (t: number) =>
      corners(t).every(
        (at) => Math.hypot(positions[at], positions[at + 1]) < outerRadius - spec.ring.rim + 1e-6,
      ) && new Set(corners(t).map((at) => positions[at + 2])).size > 1;
    const teeth = Array.from(wholly('ring')).filter((_, i) => isTooth(3 * i));
    expect(teeth.length).toBeGreaterThan(1000);
    expect(teeth.every((same) => same === 1)).toBe(true);
    const share = (name: string) => wholly(name).reduce((sum, one) => sum + one, 0) / wholly(name).length;
    expect(share('planet-3')).toBeGreaterThan(0.9);
    expect(meshOf(parts, 'ring').positions.length).toBeGreaterThan(positions.length);
  });

  test('gives the same bytes again, whatever the kernel did in between', async () => {
    const first = await buildSet(spec, additions);
    await buildSet(spec, { cut: { ring: column(1, 30, [outerRadius, 0, 0]) } });
    expect(await buildSet(spec, additions)).toEqual(first);
  });

  test('keeps parts that nothing is added to, and takes no additions as none', async () => {
    expect(await buildSet(spec, {})).toEqual(plain);
    const parts = await buildSet(spec, { cut: { 'planet-2': transforms.translate([0, 18, 0], fingerHole) } });
    expect(meshOf(parts, 'planet-1')).toEqual(meshOf(plain, 'planet-1'));
    expect(parts.map(({ unlike }) => unlike === true)).toEqual([false, false, true, false, false, false]);
  });

  test('joins first and cuts afterwards, in the order given', async () => {
    const hole = column(2, 60);
    const [sun] = await buildSet(spec, { cut: { sun: hole }, join: { sun: knob } });
    const plainSun = volumeOf(plain[0].mesh);
    expect(volumeOf(sun.mesh)).toBeCloseTo(plainSun + columnVolume(4, 5) - columnVolume(2, 13), 5);
  });

  test('puts what is for all planets into the own frame of each: its tooth on +x', async () => {
    const parts = await buildSet(spec, { join: { planets: column(0.5, 2, [2, 0, 8.5]) } });
    for (const i of [1, 2, 3, 4]) {
      const before = meshOf(plain, `planet-${i}`).positions;
      const axis = [0, 1].map((k) => mean(every(before, k)));
      const after = meshOf(parts, `planet-${i}`).positions;
      const raised = after.filter((_, k) => after[k - (k % 3) + 2] > 9);
      const pin = Math.atan2(mean(every(raised, 1)) - axis[1], mean(every(raised, 0)) - axis[0]);
      const onBed = Array.from({ length: before.length / 3 }, (_, v) => before.subarray(3 * v, 3 * v + 3))
        .filter(([, , z]) => z === 0)
        .map(([x, y]) => [Math.hypot(x - axis[0], y - axis[1]), Math.atan2(y - axis[1], x - axis[0])]);
      const tip = Math.max(...onBed.map(([radius]) => radius));
      const turns = onBed
        .filter(([radius]) => radius > tip - 1e-9)
        .map(([, angle]) => (angle - pin) / ((2 * Math.PI) / 12))
        .map((turn) => turn - Math.round(turn));
      expect(mean(turns)).toBeCloseTo(0, 6);
      expect(Math.max(...turns.map(Math.abs))).toBeLessThan(0.25);
    }
  });

  test('draws them larger by the shrinkage, like the parts', async () => {
    const shrinking = small({ filament: { material: 'PLA', shrinkage: 1 } });
    const parts = await buildSet(shrinking, { cut: { planets: fingerHole } });
    const lost = volumeOf(buildSet(shrinking)[1].mesh) - volumeOf(parts[1].mesh);
    expect(lost).toBeCloseTo(columnVolume(3, 8) / 0.99 ** 3, 6);
  });

  test('makes sound bodies with the volume that manifold-3d finds by itself', async () => {
    const { combine } = await loadKernel();
    const outside = await startKernel();
    const body = meshOf(plain, 'sun');
    const angle = evenly(-3, 3);
    const place = evenly(-9, 9);
    const shape = fc.constantFrom<() => Geom3>(
      () => column(3, 12),
      () => primitives.cuboid({ size: [4, 5, 6] }),
      () => primitives.torus({ innerRadius: 1, outerRadius: 4, innerSegments: 12, outerSegments: 20 }),
    );
    const turns = fc.oneof(fc.constant<[number, number, number]>([0, 0, 0]), fc.tuple(angle, angle, angle));
    const run = fc.property(
      fc.constantFrom('join' as const, 'cut' as const),
      shape,
      turns,
      fc.tuple(place, place, fc.oneof(fc.constantFrom(0, 4, 8), place)),
      (operation, make, turn, by) => {
        const solid = fromGeom3(transforms.translate(by, transforms.rotate(turn, make())));
        const [a, b] = [kernelBody(outside, body), kernelBody(outside, solid)];
        const theirs = operation === 'join' ? a.add(b) : a.subtract(b);
        let made: Mesh;
        try {
          made = combine(body, [{ operation, solid, parameter: 'tool' }]);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          const idle = Math.abs(theirs.volume() - a.volume()) < 1e-3;
          expect(idle || theirs.decompose().length > 1).toBe(true);
          return;
        }
        expect(edgeDefects(made)).toMatchObject({
          watertight: true,
          shells: 1,
          duplicateVertices: 0,
          unusedVertices: 0,
        });
        expect(selfIntersections(made)).toEqual([]);
        expect(Math.abs(volumeOf(made) - theirs.volume())).toBeLessThan(0.01);
      },
    );
    fc.assert(run, { numRuns: 40, seed: 5 });
  });
});

describe('refusing', () => {
  const far = transforms.translate([0, 40, 0], eye);
  test.each<[string, unknown, string, RegExp]>([
    [
      'a part that is not there',
      { join: { rings: eye } },
      'join.rings',
      /no part of this set; .*: ring, planets/,
    ],
    ['a planet too many', { cut: { 'planet-5': eye } }, 'cut.planet-5', /nearest that works: planets, sun/],
    ['a word other than join and cut', { add: { ring: eye } }, 'add', /not known here/],
    ['what is no solid', { join: { ring: [eye, 5] } }, 'join.ring[1]', /must be a geom3/],
    [
      'polygons without corners',
      { join: { ring: { ...eye, polygons: [{}] } } },
      'join.ring',
      /must be a geom3/,
    ],
    ['a list in place of names', { cut: [eye] }, 'cut', /solids by the names of parts/],
    ['nothing', null, 'additions', /must be an object/],
    [
      'an open solid',
      { cut: { sun: { ...knob, polygons: knob.polygons.slice(1) } } },
      'cut.sun.polygons',
      /closed/,
    ],
    ['an empty solid', { cut: { sun: { ...knob, polygons: [] } } }, 'cut.sun.polygons', /at least 4/],
    ['a solid that stays loose', { join: { ring: far } }, 'join.ring', /does not hold on to the part/],
    ['a cut that misses', { cut: { ring: far } }, 'cut.ring', /changes nothing, since it does not reach/],
    [
      'a join that is hidden',
      { join: { ring: column(0.5, 1, [0, outerRadius - 2, 4]) } },
      'join.ring',
      /wholly inside/,
    ],
    ['a cut in pieces', { cut: { sun: column(30, 1, [0, 0, 4]) } }, 'cut.sun', /in pieces/],
    ['a cut that leaves nothing', { cut: { sun: column(30, 99) } }, 'cut.sun', /leaves nothing/],
  ])('%s', async (_, wrong, parameter, says) => {
    const error = await buildSet(spec, wrong as Additions).catch((reason) => reason);
    expect(error).toBeInstanceOf(Refusal);
    expect(error.parameter).toBe(parameter);
    expect(error.message).toMatch(says);
  });

  test('names everything that is wrong at once', async () => {
    const error = await buildSet(spec, { join: { ring: [null, null] as never, sun: 3 as never } }).catch(
      (e) => e,
    );
    expect(error.problems.map(({ parameter }: { parameter: string }) => parameter)).toEqual([
      'join.ring[0]',
      'join.ring[1]',
      'join.sun',
    ]);
  });
});

const mean = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => a + b, 0) / values.length;
const every = (positions: Float64Array, axis: number) => positions.filter((_, i) => i % 3 === axis);

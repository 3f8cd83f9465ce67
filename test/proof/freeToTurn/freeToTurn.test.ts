// Whatever runs into something while a train turns is found, and another kernel finds it at the very turn that is named.

import { primitives } from '@jscad/modeling';
import { describe, expect, it } from 'vitest';
import { handleSeat } from '../../../lib/fit/handleSeat.js';
import { fitDrawn } from '../../../lib/fit/train/fitTrain.js';
import { measureBodies } from '../../../lib/proof/bodies.js';
import { freeToTurn as check } from '../../../lib/proof/checks/freeToTurn.js';
import { freeToTurn, type MotionGap } from '../../../lib/proof/freeToTurn/freeToTurn.js';
import type { Scene } from '../../../lib/proof/freeToTurn/scene.js';
import { sceneOf as sceneOfBuilt } from '../../../lib/proof/freeToTurn/sceneOf.js';
import { leastDistance } from '../../../lib/proof/mesh/leastDistance.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { movedTree } from '../../../lib/proof/motion/movedTree.js';
import { inspectSet, proveSet } from '../../../lib/proof/proveSet.js';
import type { Sheet } from '../../../lib/proof/sheetTypes.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { buildTrain, looseParts } from '../../../lib/solid/buildTrain.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { placed } from '../../../lib/solid/place.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { kernelBody, startKernel } from '../../outside/kernel.js';
import { fitted } from '../../planetarySets.js';
import { setOf } from '../../sets.js';
import { rackOf } from '../../trains.js';

const kernel = await startKernel();
const coarse = { tolerance: 0.02, faceWidth: 8, helix: { form: 'spur' } };
const block = (size: [number, number, number], center: [number, number, number]) =>
  primitives.cuboid({ size, center });
const finding = ({ checks }: Sheet, id = 'free-to-turn') => checks.find((one) => one.id === id)!;

function sceneOf(spec: PlanetarySpec): Scene {
  const train = fitDrawn(fitted(spec));
  const parts = buildTrain(train);
  const bodies = measureBodies(parts, [], [], train.spec.fit.gap);
  return sceneOfBuilt({ train, parts, bodies, swept: new Map(), allowed: 0.02 });
}

/** The scene with the handle nearer to its gear. */
function lowered(scene: Scene, by: number): Scene {
  const bodies = scene.bodies.map((body) =>
    body.name === 'crank-handle'
      ? { ...body, tree: movedTree(body.tree, [0, 0, -by, 0, 0, 0], [0, 0, 0]) }
      : body,
  );
  return { ...scene, bodies, seated: [] };
}

function runsInto({ pairs }: { pairs: MotionGap[] }): string[] {
  return pairs
    .filter(({ distance, limit }) => distance !== null && distance < limit)
    .map(({ between }) => between.join(' '));
}

/** Volume that two meshes share, mm³, by manifold-3d. */
function shared(a: Mesh, b: Mesh): number {
  const [one, two] = [kernelBody(kernel, a), kernelBody(kernel, b)];
  return one.intersect(two).volume();
}

const CRANK = { acrossFlats: 6, depth: 5, handle: 40 };

describe('a crank handle', () => {
  const spec = setOf(14, 14, 42, 4, { ...coarse, sun: { teeth: 14, crank: CRANK } });

  it('clears all that it passes over, by its shoulder', () => {
    const scene = sceneOf(spec);
    expect(runsInto(freeToTurn(scene))).toEqual([]);
    // Two layers of 0.2 mm over the planets, and the hair that it is lifted by: less when it is lowered.
    const found = freeToTurn(lowered(scene, 0.2)).pairs.find(
      ({ between }) => between.join() === 'planet-1,crank-handle',
    );
    expect(found?.distance).toBeCloseTo(0.201, 3);
  });

  it('is found where it lies flush on the faces', () => {
    const found = freeToTurn(lowered(sceneOf(spec), 0.4));
    expect(runsInto(found)).toEqual(expect.arrayContaining(['planet-1 crank-handle', 'ring crank-handle']));
    expect(check(found, { bodies: [], gaps: [], trees: new Map() }, null)).toMatchObject({
      holds: false,
      level: 'must',
    });
  });

  it('clears a cage over it by another kernel too, and would not without its shoulder', () => {
    const crank = { acrossFlats: 8, depth: 6, handle: 50 };
    const caged = setOf(16, 14, 44, 4, {
      ...coarse,
      module: 2,
      tolerance: 0.04,
      sun: { teeth: 16, crank },
      carrier: { form: 'cage', plates: 'both', centre: 'open' },
    });
    const drawn = fitDrawn(fitted(caged));
    const parts = buildTrain(drawn);
    const mesh = (name: string) => parts.find((part) => part.name === name)!.mesh;
    const { motion, about } = looseParts(drawn).find(({ name }) => name === 'crank-handle')!.inUse;
    const handle = mesh('crank-handle');
    // Turned over about x: y and z change their signs.
    const seated = (by: number): Mesh => ({
      triangles: handle.triangles,
      positions: handle.positions.map((value, i) => {
        const k = i % 3;
        return (k === 0 ? 1 : -1) * (value - about[k]) + about[k] + motion[k] - (k === 2 ? by : 0);
      }),
    });
    const { standOff } = handleSeat(drawn)!;
    for (let turn = 0; turn < 6; turn++) {
      const turned = placed(seated(0), (turn * Math.PI) / 18, [0, 0]);
      for (const name of ['carrier', 'planet-1', 'ring'])
        expect(shared(turned, mesh(name))).toBeLessThan(1e-3);
    }
    expect(shared(seated(standOff), mesh('carrier'))).toBeGreaterThan(500);
  });

  it('is found where it would lie under a plate or in letters', () => {
    const crank = { acrossFlats: 8, depth: 6, handle: 50 };
    const caged = sceneOf(
      setOf(16, 14, 44, 4, {
        ...coarse,
        module: 2,
        sun: { teeth: 16, crank },
        carrier: { form: 'cage', plates: 'both', centre: 'open' },
      }),
    );
    expect(runsInto(freeToTurn(caged))).toEqual([]);
    expect(runsInto(freeToTurn(lowered(caged, 3)))).toContain('carrier crank-handle');
    const lettered = sceneOf(
      setOf(16, 20, 56, 3, {
        ...coarse,
        module: 2,
        sun: { teeth: 16, crank },
        planets: { teeth: 20, count: 3, text: { content: 'a', size: 6, style: 'raised', height: 1 } },
      }),
    );
    expect(runsInto(freeToTurn(lettered))).toEqual([]);
    expect(runsInto(freeToTurn(lowered(lettered, 1)))).toContain('planet-1 crank-handle');
  });

  it('does not cross its gear, whose own letters keep clear of its shoulder', () => {
    const sun = { teeth: 24, crank: CRANK, text: { content: 'turn', size: 3, style: 'raised', height: 1 } };
    const scene = sceneOf(setOf(24, 12, 48, 3, { ...coarse, sun }));
    const own = freeToTurn(scene).pairs.find(({ between }) => between.join() === 'sun,crank-handle');
    expect(own).toMatchObject({ distance: null, limit: 0 });
    const sunk = freeToTurn({ ...lowered(scene, 1), seated: scene.seated });
    expect(runsInto(sunk)).toContain('sun crank-handle');
  });
});

describe('solids of a script', () => {
  const spec = setOf(12, 12, 36, 4, coarse);
  const distance = inspectSet(spec).meshes[0].centreDistance;

  it('are found where they meet after a turn, and another kernel finds them there', async () => {
    // A post on the ring at 45°, between planets, and an arm on every planet that reaches out to it.
    const far = 1.5 * 18 + 3;
    const post: [number, number, number] = [far * Math.SQRT1_2, far * Math.SQRT1_2, 8];
    const additions = {
      join: {
        ring: block([3, 3, 8], post),
        planets: [block([3, 3, 3], [0, 0, 9]), block([14, 2, 2], [6, 0, 10])],
      },
    };
    const { sheet } = await proveSet(spec, { ...additions, force: true });
    expect(finding(sheet)).toMatchObject({ holds: false, level: 'must', value: 0 });
    const [, planet, turned] = finding(sheet).says.match(/(planet-\d).*?turned by ([\d.]+)°/)!;
    const parts = await buildSet(spec, additions);
    const mesh = (name: string) => parts.find((part) => part.name === name)!.mesh;
    const axis = [distance, 0].map((_, i) => {
      const angle = ((Number(planet.slice(7)) - 1) * Math.PI) / 2;
      return distance * (i === 0 ? Math.cos(angle) : Math.sin(angle));
    }) as [number, number];
    const about = (body: Mesh, angle: number) =>
      placed(placed(placed(body, 0, [-axis[0], -axis[1]]), angle, [0, 0]), 0, axis);
    // The planet turns clockwise, and the ring with it by a third as much.
    const at = (degrees: number) =>
      shared(
        about(mesh(planet), (-degrees * Math.PI) / 180),
        placed(mesh('ring'), (-degrees * Math.PI) / 540, [0, 0]),
      );
    expect(at(Number(turned) + 1)).toBeGreaterThan(0.01);
    expect(at(0)).toBeLessThan(1e-6);
  });

  it('on carrier and ring are found over every turn', async () => {
    const carried = setOf(12, 12, 36, 4, { ...coarse, carrier: { plates: 'above' } });
    const outer = inspectSet(carried).parts.find(({ name }) => name === 'ring')!.bounds.max[0];
    const high = inspectSet(carried).parts.find(({ name }) => name === 'carrier')!.bounds.max[2];
    const sheet = await inspectSet(carried, {
      join: {
        carrier: block([outer + 8, 4, 3], [(outer + 8) / 2, 0, high + 1]),
        ring: block([4, 6, high + 4], [0, outer + 1, (high + 4) / 2]),
      },
    });
    expect(finding(sheet, 'body-gap').holds).toBe(true);
    expect(finding(sheet)).toMatchObject({ holds: false, value: 0 });
    expect(finding(sheet).says).toMatch(/(ring.*carrier|carrier.*ring)/);
  });

  it('hold where the turns never bring them together', async () => {
    // Equal teeth: sun and planet stand against each other as before after one turn. Two arms long enough to meet point
    // the same way; as one turns against the other, they never both point at each other.
    const armOn = (x: number, way: 1 | -1) => [
      block([3, 3, 3], [x, 0, 9]),
      block([12, 2, 1], [x + 6 * way, 0, 10]),
    ];
    const clear = await inspectSet(spec, { join: { sun: armOn(0, 1), 'planet-1': armOn(distance, 1) } });
    expect(finding(clear).says).toMatch(/followed through their period/);
    expect(finding(clear).holds).toBe(true);
    const facing = await inspectSet(spec, { join: { sun: armOn(0, -1), 'planet-1': armOn(distance, 1) } });
    expect(finding(facing)).toMatchObject({ holds: false, value: 0 });
    expect(finding(facing, 'body-gap').holds).toBe(true);
  });

  it('on a bar are found where it slides to', async () => {
    const rack = rackOf(18, 8, coarse);
    const sheet = inspectSet(rack);
    const { min, max } = sheet.parts.find(({ name }) => name === 'bar')!.bounds;
    const foot = block([3, max[1] - min[1] + 12, 4], [min[0] + 1.5, (max[1] + min[1]) / 2 + 6, 9]);
    const wheel = primitives.cylinder({ radius: 8, height: 4, center: [0, 0, 9.5], segments: 48 });
    const made = await inspectSet(rack, { join: { bar: foot, pinion: wheel } });
    expect(finding(made)).toMatchObject({ holds: false });
    expect(finding(made).says).toMatch(/pinion.*bar|bar.*pinion/);
  });
});

describe('a mounted set', () => {
  const mounted = setOf(15, 15, 45, 3, {
    ...coarse,
    module: 1,
    faceWidth: 20,
    ring: { teeth: 45, mount: { hole: 60, panel: 6 } },
  });

  it('is free of its panel and clamp ring', () => {
    expect(finding(inspectSet(mounted)).holds).toBe(true);
  });

  it('is not where something reaches out over them', async () => {
    const mast = block([4, 4, 6], [0, 0, 20]);
    const arm = block([40, 4, 2], [20, 0, 22]);
    const drop = block([4, 4, 16], [38, 0, 15]);
    const sheet = await inspectSet(mounted, { join: { sun: [mast, arm, drop] } });
    expect(finding(sheet)).toMatchObject({ holds: false });
    expect(finding(sheet).says).toMatch(/clamp-ring|panel/);
  });

  it('carries a handle over the clamp ring', () => {
    const file = { ...coarse, module: 1, faceWidth: 12, sun: { teeth: 20, crank: CRANK } };
    const spec = setOf(20, 15, 50, 5, { ...file, ring: { teeth: 50, mount: { hole: 66, panel: 8 } } });
    const scene = sceneOf(spec);
    expect(runsInto(freeToTurn(scene))).toEqual([]);
    expect(runsInto(freeToTurn(lowered(scene, 2)))).toContain('crank-handle clamp-ring');
  });
});

describe('the sheet', () => {
  it('gives the least gap through the motion, which no phase of the meshes undercuts by much', () => {
    const spec = setOf(12, 12, 36, 4, coarse);
    const sheet = inspectSet(spec);
    const trees = new Map(buildSet(spec).map(({ name, mesh }) => [name, triangleTree(mesh)]));
    const distance = sheet.meshes[0].centreDistance;
    const turned = (name: string, angle: number, x: number) =>
      movedTree(trees.get(name)!, [0, 0, 0, 0, 0, angle], [x, 0, 0]);
    const [inner, outer] = sheet.meshes.map(({ gap }) => gap.motionLeast!);
    const bound = Number(finding(sheet).says.match(/no phase comes below ([\d.]+) mm/)![1]);
    const PHASES = 31;
    let [least, leastOuter] = [1, 1];
    for (let i = 0; i < PHASES; i++) {
      const pitch = (2 * Math.PI * i) / PHASES;
      const planet = turned('planet-1', -pitch / 12, distance);
      least = leastDistance(turned('sun', pitch / 12, 0), planet, least)?.distance ?? least;
      leastOuter = leastDistance(turned('ring', -pitch / 36, 0), planet, leastOuter)?.distance ?? leastOuter;
    }
    expect(Math.min(least, leastOuter)).toBeGreaterThan(bound);
    expect(Math.abs(inner - least)).toBeLessThan(spec.tolerance / 8);
    expect(Math.abs(outer - leastOuter)).toBeLessThan(spec.tolerance / 8);
    for (const { gap } of sheet.meshes) expect(gap.motionLeast).toBeLessThanOrEqual(gap.bodies!);
  });
});

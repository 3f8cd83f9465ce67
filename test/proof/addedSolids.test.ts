// Whatever a script adds is held to the bed, to what prints without support, and to what a line can draw. Against closed
// forms of areas and lengths.

import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { booleans, primitives, transforms } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { proveSet } from '../../lib/proof/proveSet.js';
import type { Sheet } from '../../lib/proof/sheetTypes.js';
import type { Additions } from '../../lib/solid/additions.js';
import type { Geom3 } from '../../lib/solid/geom3.js';
import { blockingChecks } from '../../lib/write/blocking.js';
import { makeSet } from '../../lib/write/makeSet.js';
import { setOf } from '../sets.js';
import { gearOf, ringPairOf } from '../trains.js';

const spec = setOf(12, 12, 36, 4, {
  faceWidth: 6,
  tolerance: 0.03,
  bevel: { size: 0.6 },
  sun: { teeth: 12, bore: { shape: 'round', diameter: 4 } },
});
type Triple = [number, number, number];
const box = (size: Triple, center: Triple) => primitives.cuboid({ size, center });
const column = (radius: number, height: number, center: Triple) =>
  primitives.cylinder({ radius, height, center, segments: 32 });
const turnedAt = (solid: Geom3, turn: Triple, place: Triple) =>
  transforms.translate(place, transforms.rotate(turn, solid)) as Geom3;
const check = ({ checks }: Sheet, id: string) => checks.find((one) => one.id === id)!;
const plain = proveSet(spec).sheet;
const ring = gearOf({ teeth: 36, internal: true }, { faceWidth: 6, tolerance: 0.03 });
const plainRing = proveSet(ring).sheet;
const outer = plainRing.parts[0].bounds.max[1];

/** The sheet of the planetary set with what is added, and of its ring by itself, which takes less time. */
const setWith = async (additions: Additions) =>
  (await proveSet(spec, additions as Required<Additions>)).sheet;
const ringWith = async (joined: Geom3 | Geom3[], cut: Geom3[] = []) =>
  (await proveSet(ring, { join: { gear: joined }, cut: { gear: cut } })).sheet;
const ringWithout = async (cut: Geom3) => ringWith([], [cut]);
const blocking = (sheet: Sheet, strict = false) => {
  const known = blockingChecks((sheet.resolved.kind === 'gear' ? plainRing : plain).checks, strict);
  return blockingChecks(sheet.checks, strict)
    .map(({ id }) => id)
    .filter((id) => !known.some((one) => one.id === id));
};

describe('the bed', () => {
  const stand = (from: number) => box([8, 6, 4 - from], [0, outer + 1, 2 + from / 2]);

  test('is z = 0: nothing stands under it, and what does is named with what would pass', async () => {
    const sheet = await ringWith(stand(-4));
    expect(check(sheet, 'bed')).toMatchObject({
      holds: false,
      level: 'must',
      value: -4,
      limit: 0,
      unit: 'mm',
    });
    expect(check(sheet, 'bed').says).toMatch(/gear reaches 4.00 mm \(join.gear\) under the bed, z = 0/);
    expect(check(sheet, 'bed').says).toMatch(/join.gear 4 mm higher would pass/);
    expect(blocking(sheet)).toEqual(['bed']);
    expect(blocking(await ringWith(transforms.translate([0, 0, 4], stand(-4)) as Geom3))).toEqual([]);
  });

  test('allows what rounding leaves, and what reaches it', async () => {
    expect(check(await ringWith(stand(-5e-5)), 'bed').holds).toBe(true);
    expect(check(await ringWith(stand(-0.01)), 'bed').holds).toBe(false);
    expect(blocking(await ringWith(stand(0)))).toEqual([]);
  });

  test('stands under planets are found too, and nothing is offered that does not pass', async () => {
    const sheet = await setWith({ join: { planets: column(4, 4, [0, 0, -2]) } });
    expect(check(sheet, 'bed').says).toMatch(/^planet reaches 4.00 mm \(join.planets\) under the bed/);
    expect(check(sheet, 'bed').says).toMatch(/raised onto the bed it does not pass either/);
    expect(blocking(sheet)).toEqual(['bed']);
  });

  test('what a cut takes off again is no stand', async () => {
    const under = box([20, 20, 9], [0, outer + 1, -4.5]);
    expect(blocking(await ringWith(stand(-4), [under]))).toEqual([]);
  });

  test('stops what would be written', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'bed-'));
    const made = await makeSet(spec, { folder, join: { ring: stand(-4) } });
    expect(made.sheet.checks.find(({ id }) => id === 'bed')!.says).toMatch(
      /^ring reaches 4.00 mm \(join.ring\)/,
    );
    expect([made.files, made.blocking.map(({ id }) => id)]).toEqual([[], ['bed']]);
    expect(await readdir(folder)).toEqual([]);
    await rm(folder, { recursive: true });
  });

  test('is the one of pairs and single gears as well', async () => {
    const gear = gearOf({ teeth: 20 }, { tolerance: 0.03 });
    const foot = column(3, 4, [0, 0, -2]);
    const { sheet } = await proveSet(gear, { join: { gear: foot } });
    expect(check(sheet, 'bed')).toMatchObject({ holds: false, level: 'must', value: -4 });
  });
});

describe('what prints without support', () => {
  test('a joined arm counts with its underside, but for a line along the wall that carries it', async () => {
    const sheet = await ringWith(box([4, 12, 2], [0, outer + 4, 5]));
    // 10 mm stand out; a line of 0.45 mm, two squares of 0.2, sticks to the wall.
    expect(Math.abs(check(sheet, 'overhang').value! / (4 * (10 - 0.4)) - 1)).toBeLessThan(0.02);
    expect(check(sheet, 'overhang')).toMatchObject({ holds: false, level: 'should' });
    expect(blocking(sheet)).toEqual([]);
    expect(blocking(sheet, true)).toContain('overhang');
    const short = await ringWith(box([4, 4, 2], [0, outer - 1, 5]));
    expect(check(short, 'overhang')).toMatchObject({ holds: true });
  });

  test('a joined cone that widens upwards counts with its wall', async () => {
    const flare = (high: number) =>
      primitives.cylinderElliptic({
        height: high,
        center: [0, 0, 6 + high / 2],
        startRadius: [4, 4],
        endRadius: [8, 8],
        segments: 64,
      });
    // A frustum of a pyramid with n sides: half the perimeters of both ends times the height of a side.
    const perimeter = (radius: number) => 2 * 64 * radius * Math.sin(Math.PI / 64);
    const slope = Math.hypot(2, 4 * Math.cos(Math.PI / 64));
    const area = ((perimeter(4) + perimeter(8)) / 2) * slope;
    const pinion = gearOf({ teeth: 12 }, { faceWidth: 6, tolerance: 0.03 });
    const overhanging = async (high: number) =>
      check((await proveSet(pinion, { join: { gear: flare(high) } })).sheet, 'overhang').value;
    const before = check(proveSet(pinion).sheet, 'overhang').value!;
    expect(await overhanging(2)).toBeCloseTo(before + area, 6);
    expect(await overhanging(5)).toBeCloseTo(before, 6);
  });

  test('a joined ball counts with the cap below 45°, the first layer left out, and may not begin above that', async () => {
    const ball = (lift: number) =>
      primitives.sphere({ radius: 4, center: [0, outer + 3, 4 + lift], segments: 48 });
    const sheet = await ringWith(ball(0));
    // A zone of a sphere, 2 π r h, up to where it leans out by 45°: facets are 7.5° wide, and the mesh tolerance may
    // explain up to 4° more.
    const zone = (theta: number) => 2 * Math.PI * 4 * (4 * (1 - Math.cos((theta * Math.PI) / 180)) - 0.2);
    expect(check(sheet, 'overhang').value).toBeGreaterThan(zone(45 - 4 - 3.75));
    expect(check(sheet, 'overhang').value).toBeLessThan(zone(45 + 3.75));
    expect(check(sheet, 'overhang').says).not.toMatch(/begins in the air/);
    expect(check(await ringWith(ball(0.05)), 'overhang').says).not.toMatch(/begins in the air/);
    expect(check(await ringWith(ball(0.3)), 'overhang').says).toMatch(/^gear begins in the air at/);
  });

  test('a point that hangs is found though it leans nowhere', async () => {
    // A spike of 10° half an angle under a short arm.
    const spike = primitives.cylinderElliptic({
      height: 3,
      center: [0, 0, 1.5],
      startRadius: [1e-3, 1e-3],
      endRadius: [0.5, 0.5],
      segments: 24,
    });
    const arm = box([3, 4, 2], [0, outer - 0.5, 5]);
    const under = (lift: number) => transforms.translate([0, outer + 0.8, lift], spike) as Geom3;
    const hanging = await ringWith([arm, under(1.2)]);
    expect(check(hanging, 'overhang')).toMatchObject({ holds: false, level: 'should' });
    expect(check(hanging, 'overhang').says).toMatch(/^gear begins in the air at -?0\.0, 37\.\d, 1\.2/);
    const standing = box([3, 3, 1], [0, outer + 0.8, 0.5]);
    const carried = await ringWith([arm, under(1.2), standing]);
    expect(check(carried, 'overhang').says).not.toMatch(/begins in the air/);
  });

  test('a part that has nothing under it stops the job; the others are named by where they hang', async () => {
    const below = (height: number) => column(outer + 2, height, [0, 0, height / 2]);
    const raised = await setWith({ cut: { 'planet-2': below(1) } });
    expect(check(raised, 'overhang')).toMatchObject({ holds: false, level: 'must' });
    expect(check(raised, 'overhang').says).toMatch(
      /^planet-2 as a whole hangs in the air, 1.00 mm over the bed/,
    );
    expect(blocking(raised)).toContain('overhang');
    // Less than half a layer: it is in the first one.
    expect(check(await setWith({ cut: { 'planet-2': below(0.09) } }), 'overhang').holds).toBe(true);
  });

  test('a plate below carries what hangs a layer or two over it', async () => {
    const below = (height: number) => column(outer + 2, height, [0, 0, height / 2]);
    const plate = (top: number) => column(4, top, [0, 0, top / 2]);
    const place: Triple = [0, plain.meshes[0].centreDistance, 0];
    const over = (layers: number) =>
      setWith({
        cut: { 'planet-2': below(1), ring: column(0.1, 1, [0, outer, 0]) },
        join: {
          // An arm from the ring, below the planet's teeth.
          ring: [
            transforms.translate(place, plate(1 - 0.2 * layers)) as Geom3,
            box([3, 12, 0.4], [0, place[1] + 6, 0.2]),
          ],
        },
      });
    expect(check(await over(2), 'overhang').says).not.toMatch(/hangs in the air/);
    expect(check(await over(3), 'overhang').says).toMatch(/planet-2 as a whole hangs in the air/);
  });
});

describe('what a line can draw', () => {
  const fin = (thickness: number, turn: Triple = [0, 0, 0]) =>
    turnedAt(box([thickness, 8, 4], [0, 0, 0]), turn, [0, outer + 3, 2.2]);

  test.each<[string, Triple, number]>([
    ['upright', [0, 0, 0], 0.05],
    ['upright and turned', [0, 0, 0.4], 0.1],
    ['leaning', [0, 0.3, 0.2], 0.2],
    ['leaning the other way', [0.1, -0.5, 0.1], 0.3],
  ])('a joined fin is found: %s', async (_, turn, thickness) => {
    const thin = check(await ringWith(fin(thickness, turn)), 'thin-features');
    expect(thin).toMatchObject({ holds: false, level: 'should', unit: 'mm' });
    expect(thin.value).toBeCloseTo(thickness, 6);
    expect(thin.says).toMatch(new RegExp(`gear is ${thickness.toFixed(3)} mm thick at `));
  });

  test('a wall of a line and more is none', async () => {
    const thin = check(await ringWith(fin(0.46)), 'thin-features');
    expect(thin).toMatchObject({ holds: true, unit: '1' });
    expect(thin.says).toMatch(/nothing that a script added or left is too thin to print/);
    expect(plain.checks.find(({ id }) => id === 'thin-features')!.says).not.toMatch(/script/);
  });

  test('a plate lower than a layer is found', async () => {
    const plate = (high: number) => box([8, 8, high], [0, outer + 3, high / 2]);
    const thin = check(await ringWith(plate(0.15)), 'thin-features');
    expect(thin).toMatchObject({
      holds: false,
      value: expect.closeTo(0.15, 9),
      limit: expect.closeTo(0.2, 9),
    });
    expect(check(await ringWith(plate(0.2)), 'thin-features').holds).toBe(true);
  });

  test('a wall that a cut leaves is found, and the rim that is left of it', async () => {
    // A hole of 1 mm radius whose edge comes as near to the outer wall as `left`.
    const hole = (left: number) => column(1, 20, [0, outer - 1 - left, 3]);
    const sheet = await ringWithout(hole(0.3));
    expect(check(sheet, 'thin-features')).toMatchObject({ holds: false });
    expect(check(sheet, 'thin-features').value).toBeGreaterThan(0.25);
    expect(check(sheet, 'thin-features').value).toBeLessThan(0.35);
    expect(check(sheet, 'rim').value).toBeCloseTo(check(plainRing, 'rim').value! - 0.3 - 2, 1);
    expect(check(sheet, 'rim')).toMatchObject({ holds: false, level: 'should' });
    expect(check(await ringWithout(hole(0.6)), 'thin-features').holds).toBe(true);
  });

  test('a slot that fuses is found', async () => {
    const slot = (wide: number) => box([wide, 1, 20], [0, outer - 0.4, 3]);
    const thin = check(await ringWithout(slot(0.1)), 'thin-features');
    expect(thin).toMatchObject({
      holds: false,
      value: expect.closeTo(0.1, 9),
      limit: expect.closeTo(0.25, 9),
    });
    expect(thin.says).toMatch(/gear has a slot of 0.100 mm at .*: it fuses/);
    expect(check(await ringWithout(slot(0.3)), 'thin-features').holds).toBe(true);
  });

  test('a wall too high for its thickness is found', async () => {
    const wall = (high: number) => box([0.6, 6, high], [0, outer + 2, high / 2]);
    const thin = check(await ringWith(wall(18)), 'thin-features');
    expect(thin).toMatchObject({ holds: false, value: expect.closeTo(30, 1), limit: 25, unit: '1' });
    expect(check(await ringWith(wall(14)), 'thin-features').holds).toBe(true);
  });

  test('is asked of planets one by one where they differ', async () => {
    const top = box([0.2, 3, 3], [0, 0, 7.4]);
    const one = await setWith({
      join: { 'planet-2': transforms.translate([0, plain.meshes[0].centreDistance, 0], top) as Geom3 },
    });
    expect(check(one, 'thin-features').says).toMatch(/planet-2 is 0.200 mm thick/);
    const all = await setWith({ join: { planets: top } });
    expect(check(all, 'thin-features').says.match(/is 0.200 mm thick/g)).toHaveLength(1);
  });

  test('is asked of single gears and pairs too', async () => {
    const gear = gearOf({ teeth: 20 }, { tolerance: 0.03 });
    expect(proveSet(gear).sheet.checks.some(({ id }) => id === 'thin-features')).toBe(false);
    const { sheet } = await proveSet(gear, { join: { gear: box([0.2, 6, 4], [0, 0, 13.9]) } });
    expect(check(sheet, 'thin-features')).toMatchObject({ holds: false, value: expect.closeTo(0.2, 9) });
    const fine = await proveSet(gear, { join: { gear: box([2, 6, 4], [0, 0, 13.9]) } });
    expect(check(fine.sheet, 'thin-features')).toMatchObject({ holds: true, value: null });
    const pair = ringPairOf(15, 40, { tolerance: 0.03 });
    const wheel = proveSet(pair).sheet.parts.find(({ name }) => name === 'wheel')!.bounds;
    const cut = box([2, 2, 99], [(wheel.min[0] + wheel.max[0]) / 2, wheel.max[1], 0]);
    const rim = check((await proveSet(pair, { cut: { wheel: cut } })).sheet, 'rim');
    expect(rim.value).toBeCloseTo(check(proveSet(pair).sheet, 'rim').value! - 1, 1);
  });
});

describe('openings', () => {
  test('of what a script joins are held against fingers', async () => {
    const eye = (hole: number) =>
      booleans.subtract(column(11, 4, [0, outer + 9, 2]), column(hole / 2, 9, [0, outer + 9, 2])) as Geom3;
    const seven = check(await setWith({ join: { ring: eye(7) } }), 'finger-gaps');
    expect(seven.says).toMatch(/a hole of ring at -?0\.0, 4\d\.\d up to 7.0 mm/);
    const fourteen = check(await setWith({ join: { ring: eye(14) } }), 'finger-gaps');
    expect(fourteen.says).not.toMatch(/a hole of ring/);
  });
});

describe('what holds parts along the axis', () => {
  test('is tried on the meshes of every planet: a hole over one of them lets it out', async () => {
    const carried = setOf(16, 14, 44, 4, {
      module: 2,
      faceWidth: 8,
      tolerance: 0.05,
      helix: { form: 'spur' },
      carrier: { plates: 'both' },
    });
    const { sheet } = await proveSet(carried);
    expect(check(sheet, 'captured').holds).toBe(true);
    const place: Triple = [0, sheet.meshes[0].centreDistance, 13.5];
    const hole = await proveSet(carried, { cut: { carrier: column(18, 20, place) } });
    expect(check(hole.sheet, 'captured')).toMatchObject({ holds: false });
    expect(check(hole.sheet, 'captured').says).toMatch(/do not bear it out: planet-2 on its way out$/);
  });
});

describe('bodies that do not hang together', () => {
  const refusal = (additions: Additions) => setWith(additions).catch((error) => error.message);

  test('are refused with what is wrong', async () => {
    expect(await refusal({ join: { ring: box([4, 4, 4], [0, outer + 9, 2]) } })).toMatch(
      /^join.ring: .*does not hold on to the part, which would be 2 bodies/,
    );
    expect(await refusal({ cut: { ring: box([200, 1, 50], [0, 0, 0]) } })).toMatch(
      /^cut.ring: .*cuts the part in pieces, 2 of them/,
    );
    expect(await refusal({ cut: { ring: box([1, 1, 1], [0, outer - 2, 3]) } })).toMatch(
      /^cut.ring: .*leaves a closed hollow in the part/,
    );
    const shell = booleans.subtract(
      box([6, 6, 4], [0, outer + 2, 2]),
      box([4, 3, 2], [0, outer + 2.5, 2]),
    ) as Geom3;
    expect(await refusal({ join: { ring: shell } })).toMatch(/closes a hollow in/);
  });

  test('pass where the last solid brings them together', async () => {
    const far = box([4, 4, 4], [0, outer + 9, 2]);
    expect(blocking(await ringWith([far, box([2, 12, 2], [0, outer + 4, 1])]))).toEqual([]);
  });
});

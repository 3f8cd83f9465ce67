import { primitives } from '@jscad/modeling';
import { describe, expect, it } from 'vitest';
import { trainNumbers } from '../../../lib/fit/train/trainNumbers.js';
import type { BodyFindings } from '../../../lib/proof/bodies.js';
import { bed } from '../../../lib/proof/checks/bed.js';
import { bodyGap } from '../../../lib/proof/checks/bodyGap.js';
import { captured } from '../../../lib/proof/checks/captured.js';
import { coaxial } from '../../../lib/proof/checks/coaxial.js';
import { contactRatio } from '../../../lib/proof/checks/contactRatio.js';
import { fingerGaps } from '../../../lib/proof/checks/fingerGaps.js';
import { freeToTurn } from '../../../lib/proof/checks/freeToTurn.js';
import { helixAccuracy } from '../../../lib/proof/checks/helixAccuracy.js';
import { layers } from '../../../lib/proof/checks/layers.js';
import { opening } from '../../../lib/proof/checks/opening.js';
import { overhang } from '../../../lib/proof/checks/overhang.js';
import { rim } from '../../../lib/proof/checks/rim.js';
import { smallParts } from '../../../lib/proof/checks/smallParts.js';
import { thinFeaturesMeasured } from '../../../lib/proof/checks/thinFeatures.js';
import type { MotionGap } from '../../../lib/proof/freeToTurn/freeToTurn.js';
import { fingerGaps as gapsOf } from '../../../lib/proof/safety/fingerGaps.js';
import { fromGeom3 } from '../../../lib/solid/geom3.js';
import type { Part } from '../../../lib/solid/mesh.js';
import { fitted, planOf } from '../../planetarySets.js';
import { referenceSet, setOf } from '../../sets.js';

/** Checks on findings written down by hand: figure, limit and words are what the findings say. */
const spec = referenceSet();
const NONE: BodyFindings = { bodies: [], gaps: [], trees: new Map() };

describe('free-to-turn', () => {
  const pair = (a: string, b: string, distance: number | null, more: Partial<MotionGap> = {}): MotionGap => ({
    between: [a, b],
    how: 'followed',
    distance,
    least: 0.25,
    limit: 0.22,
    point: [3, 4, 5],
    turned: 12.34,
    whole: true,
    ...more,
  });
  const said = (...pairs: MotionGap[]) => freeToTurn({ pairs }, NONE, null);

  it('takes the nearest pair where all keep their gap', () => {
    const near = pair('sun', 'ring', 0.3);
    for (const pairs of [
      [near, pair('a', 'b', 0.4), pair('c', 'd', null)],
      [pair('c', 'd', null), pair('a', 'b', 0.4), near],
    ]) {
      const check = said(...pairs);
      expect(check).toMatchObject({ holds: true, level: 'must', value: 0.3, limit: 0.22, unit: 'mm' });
      expect(check.says).toMatch(
        /^sun and ring come nearest: 0\.3000 mm of 0\.2500 mm asked, at \(3\.0, 4\.0, 5\.0\), 5\.0 mm from the axis of the set, sun turned by 12\.3°; pairs/,
      );
    }
    expect(said(pair('c', 'd', null))).toMatchObject({ holds: true, value: null, limit: null });
    expect(said(pair('c', 'd', null)).says).toMatch(/^no body comes near another one/);
  });

  it('takes the pair that misses most where some do not, and names the others', () => {
    // Nearest is not worst: another limit holds for it.
    const pairs = [
      pair('a', 'b', 0.2, { limit: 0.21 }),
      pair('c', 'd', 0.25, { limit: 0.4, least: 0.5 }),
      pair('e', 'f', 0.1, { limit: 0.05 }),
    ];
    for (const order of [pairs, pairs.toReversed()]) {
      const check = said(...order);
      expect(check).toMatchObject({ holds: false, value: 0.25, limit: 0.4 });
      expect(check.says).toContain('c and d come nearest: 0.2500 mm of 0.5000 mm asked');
      expect(check.says).toContain('too near each other too: a and b');
      expect(check.says).not.toContain('e and f');
    }
  });

  it('says what runs into what, what was not followed, and where', () => {
    expect(said(pair('sun', 'ring', 0)).says).toMatch(/^sun runs into ring at \(3\.0/);
    const lost = said(pair('sun', 'ring', null, { whole: false }), pair('a', 'b', 0));
    expect(lost.holds).toBe(false);
    expect(lost.says).toMatch(
      /^sun and ring could not be followed .* steps fine enough; too near .*: a and b/,
    );
    const at = (more: Partial<MotionGap>) => said(pair('a', 'b', 0.3, more)).says.split(';')[0];
    expect(at({ how: 'together' })).toMatch(/from the axis of the set, at every turn$/);
    expect(at({ how: 'printed' })).toMatch(/from the axis of the set, as they lie on the bed$/);
    expect(at({ how: 'every turn', turned: null })).toMatch(/from the axis of the set$/);
  });

  it('counts pairs by how they were measured, and bounds what lies between phases', () => {
    const hows = ['every turn', 'followed', 'followed', 'together', 'printed', 'phases'] as const;
    const pairs = hows.map((how, i) => pair(`a${i}`, 'b', 0.3, { how }));
    const worst = (of: number) => ({
      ...{ name: '', volume: 0, edges: {} as never, crossings: 0, teethLost: 0 },
      deviation: { worst: of } as never,
    });
    const bodies = {
      ...NONE,
      bodies: [worst(0.01), worst(0.03), worst(0.02), { ...worst(9), deviation: null }],
    };
    const { says } = freeToTurn({ pairs }, bodies, 0.24);
    expect(says).toMatch(
      /measured: 1 over every turn, 2 followed through their period, 1 that turn together, 1 beside the set on the bed, 1 of toothed sides at \d+ phases/,
    );
    expect(says).toMatch(
      /roll at 0\.2400 mm .* within 0\.0500 mm of them, so no phase comes below 0\.1900 mm$/,
    );
    expect(freeToTurn({ pairs }, bodies, null).says).not.toContain('no phase');
    expect(freeToTurn({ pairs: pairs.slice(0, 5) }, bodies, 0.24).says).not.toContain('no phase');
  });
});

describe('helix-accuracy', () => {
  const body = (name: string, worst: number, more: object = {}) => ({
    ...{ name, volume: 1, edges: {} as never, crossings: 0, teethLost: 0 },
    deviation: { worst, astray: 0, measured: 10, area: 0, ...more } as never,
  });
  const check = (...bodies: BodyFindings['bodies']) => helixAccuracy({ spec, bodies: { ...NONE, bodies } });

  it('holds up to the tolerance, no farther, on every triangle measured', () => {
    const { tolerance } = spec;
    expect(check(body('sun', tolerance), body('ring', 0.001, { measured: 7 }))).toMatchObject({
      holds: true,
      value: tolerance,
      says: expect.stringMatching(/on 17 triangles: sun \S+, ring 0\.0010 mm$/),
    });
    expect(check(body('sun', 0.001), body('ring', 1.01 * tolerance)).holds).toBe(false);
    expect(check(body('sun', 0), body('ring', 0, { astray: 2 }))).toMatchObject({
      holds: false,
      says: expect.stringContaining('2 triangles lie on no exact surface'),
    });
    const lost = { ...body('sun', 0), teethLost: 0.02 };
    expect(check(lost).says).toContain('0.02 mm² of teeth cut away or covered on sun');
    expect(check({ ...lost, teethLost: 0.009 }).holds).toBe(true);
  });
});

describe('overhang', () => {
  const box = (name: string, low: number, high: number, x = 0, side = 10): Part => ({
    name,
    mesh: fromGeom3(primitives.cuboid({ size: [side, side, high - low], center: [x, 0, (low + high) / 2] })),
  });
  const check = (...parts: Part[]) => overhang({ spec, parts });

  it('is a must where a whole part hangs in the air, and names it with its height', () => {
    const stand = check(box('sun', 0, 5));
    expect(stand).toMatchObject({ holds: true, level: 'should' });
    expect(stand.says).toMatch(/^nothing leans out/);
    const hanging = check(box('sun', 0, 5), box('lid', 8, 9, 30));
    expect(hanging).toMatchObject({ holds: false, level: 'must' });
    expect(hanging.says).toMatch(/^lid as a whole hangs in the air, 8\.00 mm over the bed, z = 0; /);
    expect(hanging.says).not.toContain('sun');
    // Two layers over another part it is carried.
    expect(check(box('sun', 0, 5), box('lid', 5.4, 9))).toMatchObject({ level: 'should' });
  });

  it('is a should where a part that stands begins in the air elsewhere', () => {
    const foot = box('sun', 0, 5);
    const { mesh } = box('sun', 3, 6, 30);
    const count = foot.mesh.positions.length / 3;
    const both: Part = {
      name: 'sun',
      mesh: {
        ...foot.mesh,
        positions: Float64Array.from([...foot.mesh.positions, ...mesh.positions]),
        triangles: Uint32Array.from([
          ...foot.mesh.triangles,
          ...Array.from(mesh.triangles, (i) => i + count),
        ]),
      } as Part['mesh'],
    };
    const { holds, level, says } = check(both);
    expect([holds, level]).toEqual([false, 'should']);
    expect(says).toMatch(/^sun begins in the air at .*, 3\.0, with nothing under it; /);
  });

  it('that reaches under the bed is told with what a script joined', () => {
    const added = [
      { operation: 'join', parameter: 'join.sun[0]', lowest: -2 },
      { operation: 'join', parameter: 'join.sun[1]', lowest: 1 },
      { operation: 'cut', parameter: 'cut.sun[0]', lowest: -9 },
    ] as const;
    const under = bed({ spec, parts: [{ ...box('sun', -2, 5), added }, box('ring', 0, 5)] });
    expect(under).toMatchObject({ holds: false, level: 'must', value: -2, limit: 0 });
    expect(under.says).toMatch(
      /^sun reaches 2\.00 mm \(join\.sun\[0\]\) under the bed, z = 0; the set is 10\.0 × /,
    );
    const planet = { ...box('planet-2', -1, 5), unlike: true };
    expect(bed({ spec, parts: [planet] }).says).toMatch(/^planet-2 reaches 1\.00 mm under the bed/);
    expect(bed({ spec, parts: [box('planet-2', -1, 5)] }).says).toMatch(/^planet reaches 1\.00 mm under/);
  });
});

describe('what is measured or counted', () => {
  it('small-parts takes the largest margin and names every part that goes in', () => {
    const part = (name: string, fits: boolean, margin: number | null) =>
      ({ part: name, fits, margin }) as never;
    const two = smallParts({
      smallParts: [part('sun', true, 1.2), part('planet', true, 3.456), part('ring', false, null)],
    });
    expect(two).toMatchObject({ holds: false, value: 3.456, limit: 0 });
    expect(two.says).toContain('a loose sun with 1.20 mm to spare all round, a loose planet with 3.46 mm');
    const none = smallParts({ smallParts: [part('sun', false, -0.5), part('ring', false, null)] });
    expect(none).toMatchObject({ holds: true, value: -0.5 });
    expect(none.says).toMatch(/^neither sun nor ring was found/);
    expect(smallParts({ smallParts: [part('ring', false, null)] }).value).toBeNull();
  });

  it('thin-features holds without numbers where nothing is thin, and takes what does not print before what is high', () => {
    const body = (more: object) => [{ name: 'ring', thinnest: null, tallest: null, ...more }] as never;
    const tall = { thickness: 1, height: 30, at: [1, 2, 3] };
    const thin = { between: 'wall', thickness: 0.2, least: 0.45, at: [1, 2, 3] };
    const numbers = (value: number, holds: boolean) => ({ value, holds, says: 'as the file says' }) as never;
    expect(thinFeaturesMeasured(null, body({}), 20)).toMatchObject({
      ...{ holds: true, value: null, limit: 20, unit: '1' },
      says: 'nothing that a script added or left is too thin to print',
    });
    expect(thinFeaturesMeasured(numbers(7, true), body({}), 20)).toMatchObject({ holds: true, value: 7 });
    expect(thinFeaturesMeasured(numbers(27, false), body({}), 20)).toMatchObject({ holds: false, value: 27 });
    expect(thinFeaturesMeasured(null, body({ tallest: tall }), 20)).toMatchObject({
      holds: false,
      value: 30,
      unit: '1',
    });
    expect(thinFeaturesMeasured(numbers(40, false), body({ tallest: tall }), 20).value).toBe(40);
    const both = thinFeaturesMeasured(numbers(7, true), body({ tallest: tall, thinnest: thin }), 20);
    expect(both).toMatchObject({ holds: false, value: 0.2, limit: 0.45, unit: 'mm' });
    expect(both.says).toMatch(
      /^as the file says; ring is 0\.200 mm thick at 1\.0, 2\.0, 3\.0, .*; a wall of ring .* 30\.0 times/,
    );
  });

  it('layers count the face and the bevels', () => {
    const of = (faceWidth: number, more: object = {}) =>
      layers(planOf(setOf(15, 15, 45, 5, { faceWidth, printer: { layer: 0.2 }, ...more })));
    expect(of(20)).toMatchObject({ holds: true, value: expect.closeTo(0, 9) });
    expect(of(20).says).toMatch(/^the face is 100\.00 layers of 0\.2 mm high/);
    const off = of(20.1);
    expect(off.holds).toBe(false);
    expect(off.says).toMatch(
      /^the face is 100\.50 layers of 0\.2 mm high, so 20\.[02]0 mm are printed of 20\.10/,
    );
  });

  it('a rim too thin is named with the least that works', () => {
    const rimOf = (wall: number) =>
      rim(trainNumbers(setOf(15, 15, 45, 5, { ring: { teeth: 45, rim: wall } })));
    const { limit } = rimOf(9)[0];
    const least = (Math.ceil(100 * limit! - 1e-9) / 100).toFixed(2);
    expect(rimOf(2)).toMatchObject([
      {
        ...{ holds: false, value: 2, unit: 'mm' },
        says: `ring.rim 2: a rim thinner than ${least} mm may flex until a tooth skips; ${least} mm or more works`,
      },
    ]);
    const [held] = rimOf(Number(least));
    expect(held).toMatchObject({ holds: true, says: `the ring's rim is ${least} mm` });
  });

  it('a contact ratio is a pure number, gaps of mates are told as they are', () => {
    const train = fitted(setOf(15, 15, 45, 5, { helix: { form: 'spur' } }));
    const [inner, outer] = train.meshes;
    const meshes = [inner, { ...outer, transverseContactRatio: 1.25 }];
    const ratio = contactRatio({ ...train, meshes });
    expect(ratio).toMatchObject({ id: 'contact-ratio', unit: '1', value: 1.25 });
    expect(ratio.says).toMatch(/^between planets and ring: transverse 1\.250 \+ overlap 0\.000/);
    const gap = (a: string, b: string, distance: number) => ({
      between: [a, b] as [string, string],
      as: 'mates' as const,
      distance,
    });
    const told = (...gaps: BodyFindings['gaps']) =>
      bodyGap({ spec, drawn: fitted(spec), bodies: { ...NONE, gaps } });
    const check = told(
      gap('sun', 'planet-1', 0.25),
      gap('sun', 'planet-2', 0.2512),
      gap('planet-1', 'ring', 0.25),
    );
    expect(check.holds).toBe(true);
    expect(check.says).toMatch(
      /measured 0\.2500 to 0\.2512 mm between sun and planets, 0\.2500 mm between planets and ring$/,
    );
    const lost = told(gap('planet-1', 'planet-2', 0.25));
    expect(lost.holds).toBe(false);
    expect(lost.says).toMatch(
      /; nothing was measured between sun and planets; nothing was measured between planets and ring$/,
    );
  });

  it('captured names what holds and what nothing holds', () => {
    const axial = (up: number | null) => ({ up, down: up });
    const play = (planet: number | null, sun: number | null, carrier?: number | null) =>
      ({
        together: {
          ...{ planetAxial: axial(planet), sunAxial: axial(sun) },
          ...(carrier === undefined ? {} : { carrierAxial: axial(carrier) }),
        },
        ...{ heldBy: ['lips', 'plates'], confirmed: [], wayOut: [] },
      }) as never;
    expect(captured(play(null, null), 1).says).toMatch(
      /^nothing holds the planets and the sun along the axis/,
    );
    expect(captured(play(0.4, null, null), 1).says).toMatch(/^nothing holds the sun and the carrier along/);
    const held = captured(play(0.4, 0.5, 0.6), 1);
    expect(held).toMatchObject({ value: 0.6, limit: 1, holds: false });
    expect(held.says).toMatch(/^held by lips and plates: .* 0\.40 mm up .* sun 0\.50 mm .* carrier 0\.60 mm/);
    expect(held.says).toMatch(/planet up was not tried, .*the way out of the carrier was not tried$/);
  });

  it('openings are told with the edge that is laid over them, and fingers with the widest gap', () => {
    const numbers = planOf(setOf(15, 15, 45, 3));
    expect(opening(numbers).says).toMatch(/; a long straight edge drops \d/);
    expect(opening(planOf(setOf(15, 15, 45, 3, { opening: { max: 9, edge: 12 } }))).says).toMatch(
      /; a straight edge of 12 mm drops \d/,
    );
    for (const set of [numbers, planOf(referenceSet()), planOf(setOf(24, 12, 48, 3, { module: 3 }))]) {
      const found = gapsOf(set);
      const trapping = found.filter(({ diameter }) => diameter >= 5 && diameter < 13);
      const shown = (trapping.length ? trapping : found).map(({ diameter }) => diameter);
      expect(shown.length).toBeGreaterThan(0);
      expect(fingerGaps(set)).toMatchObject({ holds: trapping.length === 0, value: Math.max(...shown) });
    }
  });

  it('coaxial tells of shifts that were asked for and not found, where standard ones do', () => {
    // Eight planets as large as the sun find no room at all.
    const check = coaxial(planOf(setOf(15, 15, 45, 8, { profileShift: 'solve' })));
    expect(check.holds).toBe(true);
    expect(check.says).toMatch(
      /; profileShift: solve found no shifts \(.+\), so shifts not given are left at standard$/,
    );
  });
});

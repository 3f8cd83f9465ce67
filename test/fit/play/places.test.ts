import { describe, expect, it } from 'vitest';
import { carrierContacts } from '../../../lib/fit/play/carrierContacts.js';
import type { Contact, Feature, Motion } from '../../../lib/fit/play/contact.js';
import { backlash, radialPlay, ringTurn } from '../../../lib/fit/play/formulas.js';
import { furthest } from '../../../lib/fit/play/furthest.js';
import { type LooseSet, slices, turnedOn } from '../../../lib/fit/play/looseSet.js';
import { setContacts } from '../../../lib/fit/play/setContacts.js';
import { setPlay } from '../../../lib/fit/play/setPlay.js';
import { isPastTip, type SpaceWall, wallDistance } from '../../../lib/fit/play/spaceWall.js';
import { looseSetOf } from '../../../lib/proof/motion/looseSetOf.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { fitted } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const loose = (spec: PlanetarySpec): LooseSet => looseSetOf(fitted(spec));
const spur = { helix: { form: 'spur' }, faceWidth: 10 };
const cage = loose(setOf(15, 15, 45, 3, { ...spur, carrier: { plates: 'both', form: 'cage', gap: 0.3 } }));
const waisted = loose(
  setOf(15, 15, 45, 3, { ...spur, carrier: { plates: 'both', pin: { form: 'waisted' } } }),
);
const lipped = loose(setOf(15, 15, 45, 4, { ...spur, module: 2, retention: 'lips' }));
const herringbone = loose(setOf(12, 24, 60, 3));

/** Slopes of a contact at rest: six of its first part, six of its second. */
function slopesOf(contact: Contact): Float64Array {
  const slopes = new Float64Array(12);
  contact.read(contact.place, new Float64Array(12), 0, 6, slopes);
  return slopes;
}
const gapOf = (contact: Contact) => contact.read(contact.place, new Float64Array(12), 0, 6);

describe('every contact', () => {
  // Written down from nothing but rigid motion: what moves the whole set as one body opens no gap in it.
  it.each([
    ['of a cage', cage],
    ['of waisted pins', waisted],
    ['of lips', lipped],
    ['of herringbone teeth', herringbone],
  ])('%s keeps its gap where everything moves as one', (_, set) => {
    const centres = new Map<string, readonly [number, number]>(
      [set.sun, ...set.planets, set.ring].map(({ name, centre }) => [name, centre]),
    );
    // A slice of a helix that rises shows another place of the mesh: flanks keep their gap there, tips do not.
    const lasting = setContacts(set, 3).filter(({ feature }) => set.form === 'spur' || feature !== 'tips');
    expect(lasting.length).toBeGreaterThan(50);
    for (const contact of lasting) {
      const slopes = slopesOf(contact);
      const size = Math.max(...slopes.map(Math.abs));
      for (let k = 0; k < 6; k++) {
        const [u, w] = [[0, 1, 2].map((i) => Number(i === k)), [3, 4, 5].map((i) => Number(i === k))];
        const change = contact.between.reduce((sum, part, end) => {
          const [x, y] = centres.get(part) ?? [0, 0];
          const own = [u[0] - w[2] * y, u[1] + w[2] * x, u[2] + w[0] * y - w[1] * x, ...w];
          return sum + own.reduce((s, n, i) => s + n * slopes[6 * end + i], 0);
        }, 0);
        expect(Math.abs(change), `${contact.between} ${contact.feature} ${k}`).toBeLessThan(
          1e-9 * (1 + size),
        );
      }
    }
  });
});

describe('a carrier', () => {
  const { carrier } = cage;
  const contacts = carrierContacts(cage);
  const of = (feature: Feature, part: string) =>
    contacts.filter((one) => one.feature === feature && one.between[0] === part);
  const heights = (ones: readonly Contact[]) =>
    [...new Set(ones.map(({ z }) => Number(z.toFixed(9))))].sort((a, b) => a - b);

  it('meets planets, sun and ring with its posts, at both ends of the teeth', () => {
    const bevel = cage.planets[0].bevelSize * Math.tan(cage.bevelAngle);
    const ends = [bevel, cage.faceWidth - bevel].map((z) => Number(z.toFixed(9)));
    for (const part of ['planet-1', 'planet-2', 'planet-3', 'sun', 'ring']) {
      const posts = of('posts', part);
      expect(heights(posts), part).toEqual(ends);
      for (const one of posts) {
        expect(gapOf(one), part).toBeGreaterThanOrEqual(0.3 - 1e-9);
        const [nx, ny, nz, , , turn] = slopesOf(one);
        expect(Math.hypot(nx, ny)).toBeCloseTo(1, 12);
        expect(nz).toBe(0);
        // Round parts: nothing comes nearer as they turn about their own axes.
        expect(turn).toBeCloseTo(0, 9);
      }
    }
    // Every planet has a post on both sides.
    for (const { name, centre } of cage.planets) {
      const sides = of('posts', name).map((one) => {
        const [nx, ny] = slopesOf(one);
        return Math.sign(nx * centre[1] - ny * centre[0]);
      });
      expect(new Set(sides), name).toEqual(new Set([1, -1]));
    }
  });

  it('meets sun and ring with the edges of its lower plate, all round and at both heights', () => {
    const plate = carrier!.plates.find(({ side }) => side === 'below')!;
    const edge = (part: string) => of('plates', part).filter((one) => slopesOf(one)[2] === 0);
    for (const part of ['sun', 'ring']) {
      expect(heights(edge(part)), part).toEqual(
        [plate.from + carrier!.chamfer, plate.to].map((z) => Number(z.toFixed(9))),
      );
      const around = edge(part).map((one) => Math.atan2(slopesOf(one)[1], slopesOf(one)[0]));
      expect(Math.max(...around) - Math.min(...around)).toBeGreaterThan(1.7 * Math.PI);
      for (const one of edge(part)) expect(gapOf(one)).toBe(0.3);
    }
    const aside = furthest({ carrier: [1, 0, 0, 0, 0, 0] }, contacts, ['carrier']);
    // Round parts touch in sixteen directions only, which are off by 2 % between two of them.
    expect(aside.value).toBeGreaterThanOrEqual(0.3 - 1e-9);
    expect(aside.value).toBeLessThan(0.3 * 1.02);
    expect(aside.heldBy).toContain('plates');
    const up = furthest({ carrier: [0, 0, 1, 0, 0, 0] }, contacts, ['carrier']);
    expect(up.value).toBeCloseTo(carrier!.axialGap, 9);
  });

  it('has at least as much play where everything is loose as between held gears', () => {
    const { carrier: own, together, planet } = setPlay(waisted);
    // 45° cones on held planets; gears that go along let it farther.
    expect(own!.up.value).toBeCloseTo(0.25 * Math.SQRT2, 6);
    for (const way of ['up', 'down'] as const) {
      expect(together.carrier![way].value).toBeGreaterThan(own![way].value - 1e-3);
      expect(together.carrier![way].value).toBeLessThan(2 * (0.4 + 0.25 * Math.SQRT2));
      expect(together.planet[way].value).toBeGreaterThan(planet[way].value - 1e-3);
    }
  });
});

describe('play of everything at once', () => {
  it('is the same up and down in a set that is its own mirror image, each motion going its own way', () => {
    const { up, down } = setPlay(herringbone).together.planet;
    expect(down.value).toBe(up.value);
    const [name] = [herringbone.planets[0].name];
    expect(up.motions[name][2]).toBeCloseTo(up.value, 9);
    expect(down.motions[name][2]).toBeCloseTo(-down.value, 9);
    for (const [part, motion] of Object.entries(up.motions)) {
      const [x, y, z, a, b, c] = motion;
      const mirrored: Motion = [x, y, -z, -a, -b, c];
      expect(down.motions[part]).toEqual(mirrored);
    }
  });

  it('leaves teeth the same depth whichever hand their helix has', () => {
    const left = (hand: string) =>
      setPlay(loose(setOf(15, 15, 45, 3, { helix: { form: 'helical', angle: 25, hand }, faceWidth: 12 })))
        .together.engagementLeft;
    const [one, other] = [left('right'), left('left')];
    expect(one.sun).toBeCloseTo(other.sun, 2);
    expect(one.ring).toBeCloseTo(other.ring, 2);
  });
});

describe('closed forms', () => {
  it('hold a planet by whichever tip first reaches its root', () => {
    // A gap wide enough that no flank wedges before: only the bottom clearance of a standard tooth is left.
    const set = loose(setOf(15, 15, 45, 3, { ...spur, fit: { gap: 0.3 } }));
    const longer = (part: 'sun' | 'ring' | 'planet', by: number): LooseSet => {
      const grown = (gear: LooseSet['sun']) => ({
        ...gear,
        profile: { ...gear.profile, tipRadius: gear.profile.tipRadius + by },
      });
      return part === 'planet'
        ? { ...set, planets: set.planets.map(grown) }
        : { ...set, [part]: grown(set[part]) };
    };
    const clearance = 0.25 * 1.5;
    const plain = radialPlay(set);
    expect(plain.toSun).toBeCloseTo(clearance, 9);
    expect(plain.toRing).toBeCloseTo(clearance, 9);
    expect(radialPlay(longer('sun', 0.1))).toEqual({ ...plain, toSun: expect.closeTo(clearance - 0.1, 9) });
    // The ring's tips are cut back to the planets' involutes, so they have farther to go.
    const left = set.ring.profile.tipRadius - set.planets[0].profile.rootRadius - set.outer.centreDistance;
    expect(left).toBeGreaterThan(clearance);
    const inward = radialPlay(longer('ring', clearance / 2 - left));
    expect(inward).toEqual({ ...plain, toRing: expect.closeTo(clearance / 2, 9) });
    const both = radialPlay(longer('planet', 0.1));
    expect(both.toSun).toBeCloseTo(clearance - 0.1, 9);
    expect(both.toRing).toBeLessThan(plain.toRing);
  });

  it('turn a ring by the backlash of both its meshes on the base circle', () => {
    const { gap, ring, outer } = herringbone;
    const { normal } = backlash(outer, gap, ring.profile.sizes.baseHelixAngle);
    const onBase = normal / Math.cos(ring.profile.sizes.baseHelixAngle);
    expect(ringTurn(herringbone) * outer.baseRadius2).toBeCloseTo(onBase, 12);
  });

  it('turn a set on by whole pitches as it meshes: the ring and the planets against the sun', () => {
    for (const pitches of [1, 0.5, 2]) {
      const on = turnedOn(herringbone, pitches);
      const turn = (gear: 'sun' | 'ring') => on[gear].rotation - herringbone[gear].rotation;
      expect(turn('sun')).toBeCloseTo((2 * Math.PI * pitches) / 12, 12);
      expect(turn('ring')).toBeCloseTo((-2 * Math.PI * pitches) / 60, 12);
      for (const [i, planet] of on.planets.entries())
        expect(planet.rotation - herringbone.planets[i].rotation).toBeCloseTo(
          (-2 * Math.PI * pitches) / 24,
          12,
        );
    }
  });

  it('take planes at both ends, where bevels begin, and twice in the middle of a herringbone', () => {
    const count = (set: LooseSet, at: number) =>
      slices(set, [set.sun, ...set.planets, set.ring], 4).filter(({ z }) => Math.abs(z - at) < 1e-9).length;
    for (const set of [herringbone, lipped]) {
      const height = Math.max(set.sun.bevelSize, set.planets[0].bevelSize, set.ring.bevelSize);
      const bevel = height * Math.tan(set.bevelAngle);
      for (const z of [0, set.faceWidth, bevel, bevel / 2, set.faceWidth - bevel, set.faceWidth - bevel / 2])
        expect(count(set, z), String(z)).toBe(1);
      expect(count(set, set.faceWidth / 2)).toBe(set === herringbone ? 2 : 1);
    }
  });
});

describe('the wall of a tooth', () => {
  const wall = (points: number[], more: Partial<SpaceWall> = {}): SpaceWall => ({
    points: Float64Array.from(points),
    empty: 1,
    tipFirst: true,
    deepest: 2,
    ...more,
  });
  const straight = [0, 0, 1, 0, 2, 0];

  it('is left on its right side, and inside on its left one', () => {
    expect(wallDistance(wall(straight), 0.5, -1)).toBe(1);
    expect(wallDistance(wall(straight), 0.5, 1)).toBe(-1);
    expect(wallDistance(wall(straight, { empty: -1 }), 0.5, 1)).toBe(1);
    // Behind the tooth, and past its ends, there is none.
    expect(wallDistance(wall(straight, { deepest: 0.5 }), 0.5, 1)).toBe(1);
    expect(wallDistance(wall(straight), -3, 4)).toBe(5);
    expect(wallDistance(wall(straight), 5, 4)).toBe(5);
  });

  it('says which way leads away, also from on it', () => {
    const normal = new Float64Array(2);
    const away = (x: number, y: number, empty: 1 | -1 = 1) => {
      wallDistance(wall(straight, { empty }), x, y, normal);
      return [...normal].map((n) => n + 0);
    };
    expect(away(0.5, -1)).toEqual([0, -1]);
    expect(away(0.5, 1)).toEqual([0, -1]);
    expect(away(0.5, 0)).toEqual([0, -1]);
    expect(away(0.5, 0, -1)).toEqual([0, 1]);
    expect(away(-3, 4)).toEqual([expect.closeTo(-0.6, 12), expect.closeTo(0.8, 12)]);
  });

  it('asks both lines at a corner, also where a point stands twice', () => {
    for (const points of [
      [0, 0, 1, 0, 2, 0],
      [0, 0, 1, 0, 1, 0, 2, 0],
    ]) {
      expect(wallDistance(wall(points), 1, -0.5)).toBe(0.5);
      expect(wallDistance(wall(points), 1, 0.5)).toBe(-0.5);
    }
    // Behind a sharp corner, which turns back on itself, the nearer line alone would have it outside.
    const sharp = [0, 0, 2, 0, 0, -0.2];
    expect(wallDistance(wall(sharp), 2.5, -0.01)).toBeLessThan(0);
    expect(wallDistance(wall(sharp, { empty: -1 }), 2.5, -0.01)).toBeGreaterThan(0);
  });

  it('ends at the tip, on whichever end that is', () => {
    for (const points of [straight, [0, 0, 0, 0, 1, 0, 2, 0]]) {
      expect(isPastTip(wall(points), -0.3, 0.2)).toBe(true);
      expect(isPastTip(wall(points), 2.3, 0.2)).toBe(false);
      expect(wallDistance(wall(points), -0.3, 0.4)).toBe(0.5);
    }
    expect(isPastTip(wall(straight), 0.5, 0.2)).toBe(false);
    expect(isPastTip(wall(straight, { tipFirst: false }), 2.3, 0.2)).toBe(true);
    expect(isPastTip(wall(straight, { tipFirst: false }), -0.3, 0.2)).toBe(false);
  });
});

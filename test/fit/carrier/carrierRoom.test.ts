import { describe, expect, it } from 'vitest';
import { carrierSizes } from '../../../lib/fit/carrier/carrierSizes.js';
import { Refusal } from '../../../lib/refusal.js';
import { fitSet } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const specOf = (
  carrier: object,
  more: object = {},
  counts: [number, number, number, number] = [15, 15, 45, 3],
) => setOf(...counts, { carrier, ...more });
const sizesOf = (...args: Parameters<typeof specOf>) => {
  const spec = specOf(...args);
  return carrierSizes(spec, fitSet(spec))!;
};

/** What a file is refused for; null where it is taken. */
function refusalOf(...args: Parameters<typeof specOf>): Refusal | null {
  try {
    sizesOf(...args);
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}

const bossOf = (boss: object, more: object = {}) => ({
  plates: 'above',
  boss: { height: 5, ...boss },
  ...more,
});
const boltsOf = (bolts: object, more: object = {}) => ({
  plates: 'both',
  bolts: { diameter: 3.4, ...bolts },
  ...more,
});
type Case = [string, (value: number) => object, number, string, number];

// A file as it depends on one size; a value that is refused; what is named; the least change that tells.
const edges: Case[] = [
  [
    'a round boss too wide',
    (diameter) => bossOf({ shape: 'round', diameter }),
    80,
    'carrier.boss.diameter',
    -0.01,
  ],
  [
    'a hexagon too wide',
    (acrossFlats) => bossOf({ shape: 'hexagon', acrossFlats }),
    80,
    'carrier.boss.acrossFlats',
    -0.01,
  ],
  [
    'a square too wide',
    (acrossFlats) => bossOf({ shape: 'square', acrossFlats }),
    80,
    'carrier.boss.acrossFlats',
    -0.01,
  ],
  [
    'a D too wide',
    (diameter) => bossOf({ shape: 'D', diameter, acrossFlat: 0.9 * diameter }),
    80,
    'carrier.boss.diameter',
    -0.01,
  ],
  ['bolts too wide', (diameter) => boltsOf({ diameter, count: 3 }), 30, 'carrier.bolts.diameter', -0.02],
  ['bolts too far out', (circle) => boltsOf({ circle, count: 3 }), 120, 'carrier.bolts.circle', -0.01],
  ['bolts too far in', (circle) => boltsOf({ circle, count: 3 }), 5, 'carrier.bolts.circle', 0.01],
  [
    'bolts under a boss',
    (circle) =>
      bossOf(
        { shape: 'round', diameter: 24 },
        { centre: 'closed', bolts: { diameter: 3, circle, count: 3 } },
      ),
    20,
    'carrier.bolts.circle',
    0.01,
  ],
  ['too many bolts', (count) => boltsOf({ count }), 30, 'carrier.bolts.count', -1],
  [
    'a pin too wide',
    (diameter) => ({ pin: { diameter, form: 'straight' } }),
    30,
    'carrier.pin.diameter',
    -0.01,
  ],
];

describe('what finds no room on a carrier', () => {
  it.each(edges)('%s: the offer is taken, and nothing nearer is', (_, carrier, asked, parameter, step) => {
    const refused = refusalOf(carrier(asked))!;
    expect(refused.parameter).toBe(parameter);
    const offer = refused.nearest[0] as number;
    expect(typeof offer).toBe('number');
    // Between what was asked and what is offered nothing is taken.
    expect(Math.sign(offer - asked)).toBe(Math.sign(step));
    expect(refusalOf(carrier(offer))).toBeNull();
    expect(refusalOf(carrier(offer - step))?.parameter).toBe(parameter);
  });

  it('a gap between planets that leaves no post: the largest that does is offered', () => {
    const cage = (gap: number) => ({ form: 'cage', plates: 'both', gap });
    let found = 0;
    for (const module of [0.5, 0.6, 0.8])
      for (const asked of [0.3, 0.6, 0.9, 1.2, 1.5]) {
        const more = { module, fit: { gap: 0.1 } };
        const refused = refusalOf(cage(asked), more, [15, 15, 45, 5]);
        if (refused?.parameter !== 'carrier.gap') continue;
        found++;
        const offer = refused.nearest[0] as number;
        expect(offer).toBeLessThan(asked);
        expect(refusalOf(cage(offer), more, [15, 15, 45, 5])).toBeNull();
        if (offer + 0.011 < asked)
          expect(refusalOf(cage(offer + 0.011), more, [15, 15, 45, 5])).not.toBeNull();
      }
    expect(found).toBeGreaterThan(0);
  });

  it('cones on a pin that no bore leaves room for: a straight one is offered', () => {
    const pin = { diameter: 12, form: 'barrelled', depth: 4 };
    expect(refusalOf({ pin }, { module: 1 }, [30, 12, 54, 3])).toMatchObject({
      parameter: 'carrier.pin.form',
      nearest: ['straight'],
    });
  });
});

// A layer over a gap hangs from planet to planet until its way is as long as a bridge may be, 0.6 of limits.bridge.
it('a plate over the gears is whole as far out as a bridge reaches from planet to planet', () => {
  for (const bridge of [12, 16, 20]) {
    const { plates, lobeRadius } = sizesOf(
      { plates: 'above', form: 'pins' },
      { module: 2, limits: { bridge } },
    );
    const { floor, outer } = plates[0];
    const { centreDistance } = fitSet(specOf({ plates: 'above' }, { module: 2 }));
    if (floor === outer) continue;
    // Where the circle of the floor meets the circles about two planets' axes, at ±60° for three planets.
    const cosine = (floor ** 2 + centreDistance ** 2 - lobeRadius ** 2) / (2 * floor * centreDistance);
    const way = 2 * floor * Math.sin(Math.PI / 3 - Math.acos(Math.min(1, cosine)));
    expect(way).toBeCloseTo(0.6 * bridge, 3);
    expect(floor).toBeGreaterThan(Math.sqrt(centreDistance ** 2 - lobeRadius ** 2));
  }
});

it('posts of a cage keep the gap to all teeth, and on the bed their first layers’ room too', () => {
  for (const plates of ['above', 'both', 'below'] as const) {
    const carrier = { form: 'cage', plates, gap: 0.4 };
    const counts: [number, number, number, number] = [18, 12, 42, 3];
    const { posts } = sizesOf(carrier, { module: 2 }, counts);
    const { planets, centreDistance, profiles } = fitSet(specOf(carrier, { module: 2 }, counts));
    const axes = planets.map(({ angle }) => [
      centreDistance * Math.cos(angle),
      centreDistance * Math.sin(angle),
    ]);
    // Corners and middles of sides: sides that face planets touch the circle around them from outside.
    const nearest = (points: readonly (readonly number[])[]) =>
      Math.min(
        ...points
          .flatMap(([x, y], i) => {
            const [u, v] = points[(i + 1) % points.length];
            return [
              [x, y],
              [(x + u) / 2, (y + v) / 2],
            ];
          })
          .flatMap(([x, y]) => [
            ...axes.map(([px, py]) => Math.hypot(x - px, y - py) - profiles.planet.tipRadius),
            Math.hypot(x, y) - profiles.sun.tipRadius,
            profiles.ring.tipRadius - Math.hypot(x, y),
          ]),
      );
    expect(posts).toHaveLength(3);
    for (const { body, foot, cut } of posts) {
      expect(nearest(body)).toBeCloseTo(0.4, 6);
      expect(nearest(foot)).toBeCloseTo(0.4 + cut, 6);
      expect(cut > 0).toBe(plates === 'above');
    }
  }
});

import { boreWidth, mainSize } from '../../features/bore.js';
import { refuse } from '../../refusal.js';
import { ceilThousandth, floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { Boss, Carrier } from '../../spec/types.js';
import { polar } from '../../tooth/polar.js';
import type { CarrierSet, Plate } from './carrierSizes.js';
import type { Post } from './postShape.js';

/** Narrower room than this, mm, is none: offers have three decimals. */
const LEAST_CHOICE = 0.002;

/** Radius of the circle around a boss, mm; 0 for none. */
export function bossReach(boss: Boss): number {
  const size = mainSize(boss);
  return size ? size.value * size.reach : 0;
}

/**
 * A boss stands on the plate with a wall to spare all round, and leaves a wall around the plate's opening.
 * @throws Refusal with the nearest size that does
 */
export function bossRoom({ boss }: Carrier, { inner, whole }: Plate, wall: number): void {
  const size = mainSize(boss);
  if (!size) return;
  const { key, value, reach } = size;
  const near = boreWidth(boss) / value - 0.5;
  const most = floorThousandth((whole - wall) / reach);
  const least = Math.max(ranges.boss[0], inner === 0 ? 0 : ceilThousandth((inner + wall) / near));
  if (value >= least - 1e-9 && value <= most + 1e-9) return;
  const none = 'leaves no boss room between the opening and the edge of the plate';
  if (least > most) refuse('carrier-no-room', 'carrier.centre', 'open', none, ['closed']);
  const rule = `must be from ${least} to ${most} mm to stand on the plate, ${wall.toFixed(2)} mm from its edges`;
  refuse('carrier-no-room', `carrier.boss.${key}`, value, rule, [value > most ? most : least]);
}

/**
 * Centres of the bolt holes. They begin midway between two planets where pins go through the plate, in line with a planet
 * where posts stand between.
 * @throws Refusal with the nearest circle, size or count that leaves a wall around every hole
 */
export function boltsOn(
  { bolts, pin, boss, form, gap }: Carrier,
  { inner, whole }: Plate,
  wall: number,
  { planets, centreDistance, profiles }: CarrierSet,
  posts: readonly Post[],
): [number, number][] {
  if (bolts === 'none') return [];
  const clear = bolts.diameter / 2 + wall;
  const least = Math.max(inner, bossReach(boss)) + clear;
  const most = whole - clear;
  if (most - least < LEAST_CHOICE) {
    const widest = floorThousandth(whole - Math.max(inner, bossReach(boss)) - 2 * wall - 2 * LEAST_CHOICE);
    const rule = 'leaves no wall to the edges of the plate or to the boss';
    if (widest >= ranges.plateBolt[0])
      refuse('carrier-no-room', 'carrier.bolts.diameter', bolts.diameter, rule, [widest]);
    refuse('carrier-no-room', 'carrier.bolts', bolts, rule, ['none']);
  }
  const radius = bolts.circle === undefined ? (least + most) / 2 : bolts.circle / 2;
  if (radius < least - 1e-9 || radius > most + 1e-9) {
    const [low, high] = [ceilThousandth(2 * least), floorThousandth(2 * most)];
    const rule = `must be from ${low} to ${high} mm`;
    refuse('carrier-no-room', 'carrier.bolts.circle', bolts.circle, rule, [radius < least ? low : high]);
  }
  const between = (planets[0].angle + planets[1].angle) / 2;
  const start = form === 'pins' ? between : planets[0].angle;
  const places = (count: number) =>
    Array.from({ length: count }, (_, i) => polar(radius, start + (2 * Math.PI * i) / count));
  const taken = planets.map(({ angle }) => polar(centreDistance, angle));
  const near = ([x, y]: [number, number]) => Math.min(...taken.map(([px, py]) => Math.hypot(x - px, y - py)));
  const overPlanet = profiles.planet.tipRadius + gap;
  // Posts fill all that planets leave, so what is clear of them lies over a planet, or nearer to the axis, or farther out.
  const beside = posts.some(({ from, to }) => radius > from - clear && radius < to + clear);
  const collides = (centre: [number, number]) =>
    pin ? near(centre) < pin.diameter / 2 + clear : beside && near(centre) > overPlanet - clear;
  const collide = (count: number) => places(count).some(collides);
  const crowded = (count: number) => 2 * radius * Math.sin(Math.PI / count) < bolts.diameter + wall;
  if (collide(bolts.count) || crowded(bolts.count)) {
    const [fewest, mostBolts] = ranges.plateBolts;
    const counts = Array.from({ length: mostBolts - fewest + 1 }, (_, i) => fewest + i)
      .sort((a, b) => Math.abs(a - bolts.count) - Math.abs(b - bolts.count))
      .filter((count) => !collide(count) && !crowded(count));
    const rule = 'puts holes into each other or into the pins or posts';
    if (counts.length) refuse('carrier-no-room', 'carrier.bolts.count', bolts.count, rule, [counts[0]]);
    refuse('carrier-no-room', 'carrier.bolts', bolts, rule, ['none']);
  }
  return places(bolts.count);
}

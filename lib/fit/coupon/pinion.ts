import type { Bore, CommonSpec } from '../../spec/types.js';
import { type Gear, gearSizes, radians } from '../../tooth/gear.js';
import { tipThickness } from '../../tooth/thickness.js';
import { leastProfileShift, straightDepth } from '../../tooth/undercut.js';

/** Share of the gap taken from the pinion: few teeth have thin tips, which a bar has not. */
export const PINION_SHARE = 0.25;
/** A pinion has about this reference diameter, mm: smaller ones cannot be gripped, larger ones take long. */
const PINION = 13;
/** Fewest teeth of a pinion. */
const FEWEST = 9;
/** Shift beyond what undercut asks for, and the most of all, in modules: more leaves no tips. */
const SPARE_SHIFT = 0.03;
const MOST_SHIFT = 0.4;
/** Thinnest tips that teeth are added for, in modules, and the most teeth: racks that need more are refused by their own rules. */
const LEAST_TIP = 0.25;
const MOST_TEETH = 60;
/** Keys that turn a pinion, mm across flats: quarter-inch bits, then hexagon keys (ISO 2936, from memory). */
const KEYS = [6.35, 5, 4, 3, 2.5, 2];
/** How much wider than the key its hole is, mm. */
const KEY_PLAY = 0.3;
/** Least wall around the hole, in line widths. */
const KEY_WALL = 3;

/** As many teeth as make it wide enough to grip, and as can be shifted clear of undercut with tips left. */
export function pinionOf(like: CommonSpec, helixAngle: number, gap: number) {
  const { module, pressureAngle, rack } = like;
  const gear = (teeth: number, profileShift = 0): Gear => {
    return { teeth, module, pressureAngle, helixAngle, rack, profileShift, internal: false };
  };
  const pitch = 2 * gearSizes(gear(1)).referenceRadius;
  // Its mate's tips reach this deep, and stand off by the gap.
  const deepest = Math.max(straightDepth(gear(1)), rack.addendum + gap / module / 4);
  const shiftFor = (teeth: number) => {
    const least = leastProfileShift(gear(teeth), deepest) + SPARE_SHIFT;
    return Math.max(0, Math.ceil(least * 100) / 100);
  };
  const tip = (one: Gear) => tipThickness(one, gearSizes(one).tipRadius, PINION_SHARE * gap) / module;
  const serves = (teeth: number) =>
    shiftFor(teeth) <= MOST_SHIFT && tip(gear(teeth, shiftFor(teeth))) >= LEAST_TIP;
  let teeth = Math.max(FEWEST, Math.ceil(PINION / pitch));
  while (!serves(teeth) && teeth < MOST_TEETH) teeth++;
  return { teeth, profileShift: Math.min(MOST_SHIFT, shiftFor(teeth)) };
}

/** The largest key that leaves a wall inside the roots; a round hole is no use, so none where no key fits. */
export function keyHole(
  like: CommonSpec,
  { teeth, profileShift }: { teeth: number; profileShift: number },
  angle: number,
): Bore {
  const { module, rack, printer } = like;
  const pitchRadius = (teeth * module) / Math.cos(radians(angle)) / 2;
  const root = pitchRadius - (rack.dedendum - profileShift) * module;
  const wall = KEY_WALL * printer.lineWidth;
  const key = KEYS.find((size) => (size + KEY_PLAY) / 2 / Math.cos(Math.PI / 6) <= root - wall);
  return key === undefined
    ? { shape: 'none' }
    : { shape: 'hexagon', acrossFlats: Math.round(1000 * (key + KEY_PLAY)) / 1000 };
}

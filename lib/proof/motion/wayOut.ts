import { CARRIER } from '../../fit/play/carrierContacts.js';
import type { Motion } from '../../fit/play/contact.js';
import type { SetPlay } from '../../fit/play/setPlay.js';
import { meetsAlways } from './meetsAlways.js';
import type { MovingSet } from './movingSet.js';

/** One level on the way out of one part. */
export interface WayOut {
  part: string;
  /** Shift along the axis, mm. */
  level: number;
  /** How many turns were tried there, over a whole pitch. */
  turns: number;
  /** True when the meshes meet at every one of them. */
  blocked: boolean;
}

/** The level tried, in plays between held mates: whoever leaves must pass it, so that one blocked level is enough. */
const LEVEL = 2;

/**
 * Tries on the meshes whether a part can pass a level on its way out, whatever its turn. The turns lie closer together
 * than the backlash is wide, so that no turn that is clear is stepped over.
 */
export function wayOut(moving: MovingSet, { planet, sun, carrier }: SetPlay): WayOut[] {
  const { set, changed = false } = moving;
  const found: WayOut[] = [];
  const planets = changed ? set.planets : set.planets.slice(0, 1);
  for (const [gear, play] of [...planets.map((one) => [one, planet] as const), [set.sun, sun] as const]) {
    const { sizes } = gear.profile;
    const pitch = (2 * Math.PI) / gear.profile.gear.teeth;
    const backlash = (2 * set.gap) / (sizes.baseRadius * Math.cos(sizes.baseHelixAngle));
    const turns = Math.ceil(pitch / (backlash / 2));
    for (const [way, { value }] of [
      [1, play.up],
      [-1, play.down],
    ] as const) {
      const level = way * LEVEL * value;
      const turned = (i: number): Motion => [0, 0, level, 0, 0, (i * pitch) / turns];
      const blocked = meetsAlways(
        moving,
        gear.name,
        Array.from({ length: turns }, (_, i) => turned(i)),
      );
      found.push({ part: gear.name, level, turns, blocked });
    }
  }
  for (const [way, play] of [
    [1, carrier?.up],
    [-1, carrier?.down],
  ] as const) {
    if (!play) continue;
    // Pins and posts keep it from turning by itself.
    const level = way * LEVEL * play.value;
    const motion: Motion = [0, 0, level, 0, 0, 0];
    const blocked = meetsAlways(moving, CARRIER, [motion]);
    found.push({ part: CARRIER, level, turns: 1, blocked });
  }
  return found;
}

import type { Station } from '../../fit/coupon/stations.js';
import { wallClearance } from '../../fit/coupon/stations.js';
import type { Motion } from '../../fit/play/contact.js';
import { gearSizes } from '../../tooth/gear.js';
import { allowedGapError } from '../allowedGapError.js';
import { leastDistance } from '../mesh/leastDistance.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import { movedTree } from '../motion/movedTree.js';

/** How far a pinion can move along its axis in its slot, mm, and whether its meshes bear that out. */
export interface StationPlay {
  /** With the pinion in the middle of its play, and pushed off the teeth onto the smooth wall. */
  centred: number;
  pushedOff: number;
  /** Nothing meets just short of the way, both ways up and down, pushed off. */
  clear: boolean;
  /** Just beyond it something does, however the pinion is turned. */
  blocked: boolean;
}

/** Turns tried within a pitch. The first, where both flanks are equally far, leaves the most room. */
const TURNS = 8;
/** Share of the way to the smooth wall that a pinion is pushed: short of touching it. */
const PUSHED = 0.999;

/**
 * Play of a pinion along its axis. A flank's normal is inclined to the axis by the base helix angle, so both halves
 * of a herringbone stop it after gap / sin β_b; pushed off the rack by c, every flank is farther by c sin α_n.
 * Source: derived; ISO 21771 for the base helix. Tipping in the slot is left out.
 * @param pinion and `frame`: trees of both as they come off the printer
 */
export function stationPlay(
  station: Station,
  pinion: TriangleTree,
  frame: TriangleTree,
  axis: readonly [number, number],
): StationPlay {
  const { gap, spec, asked } = station;
  const { baseHelixAngle, normalPressureAngle } = gearSizes(asked.gears[0].gear);
  const off = wallClearance(gap);
  const centred = gap / Math.sin(baseHelixAngle);
  const pushedOff = (gap + PUSHED * off * Math.sin(normalPressureAngle)) / Math.sin(baseHelixAngle);
  const error = allowedGapError(spec) / gap;
  const pitch = (2 * Math.PI) / asked.gears[0].gear.teeth;
  const meets = (way: number, turn: number) => {
    const motion: Motion = [0, PUSHED * off, way, 0, 0, turn];
    return leastDistance(movedTree(pinion, motion, [axis[0], axis[1], 0]), frame, 0) !== null;
  };
  const ways = [1, -1].map((sign) => sign * pushedOff);
  return {
    centred,
    pushedOff,
    clear: ways.every((way) => !meets(way * (1 - error), 0)),
    blocked: ways.every((way) =>
      Array.from({ length: TURNS }, (_, i) => (pitch * i) / TURNS).every((turn) =>
        meets(way * (1 + 2 * error), turn),
      ),
    ),
  };
}

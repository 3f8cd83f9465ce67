import { leastDistance } from '../mesh/leastDistance.js';
import type { DistanceTree } from '../mesh/triangleTree.js';
import { movedTree } from '../motion/movedTree.js';
import { period, relativeMotion, speedAgainst, type Turning } from './turning.js';

/** The least distance of two bodies while both move, and after how many pitches. */
export interface Followed {
  /** mm; null where it is more than was looked for all the way. */
  distance: number | null;
  point: [number, number, number];
  pitches: number;
  /** False where so many steps were needed that it was given up. */
  whole: boolean;
}

/** Distances beyond what is asked are looked for this much farther: the farther, the longer the steps, mm. */
const BEYOND = 3;
/** Steps after which it is given up: some seconds. */
const MOST_STEPS = 6000;
/** Steps of what is left of the period, once it is known that bodies come too near. */
const LOOKS = 48;

/**
 * Follows two bodies through a whole period of their motion, in steps as long as no point can come nearer than `wanted`
 * by more than `fine` between them: the step times the fastest point's way by a pitch is what the distance is more than
 * that (conservative advancement). Once they come too near, the rest is looked through in equal steps for where it is worst.
 * @param mover the smaller of the two, of which a moved copy is made at every step
 * @param wanted least distance asked for, mm
 * @param fine how exactly it is found, mm, more than 0
 * @param travel see `period`
 */
export function follow(
  mover: { tree: DistanceTree; turning: Turning },
  other: { tree: DistanceTree; turning: Turning },
  wanted: number,
  fine: number,
  travel: number,
): Followed {
  const { from, to } = period(mover.turning, other.turning, travel);
  const speed = speedAgainst(mover.turning, other.turning, reachOf(mover, other.turning, travel));
  const within = wanted + BEYOND;
  // Nothing is inside an open surface.
  const open = !mover.tree.shellPoints.length || !other.tree.shellPoints.length;
  const [own, mate] = [mover.tree, other.tree].map((tree) => (open ? { ...tree, shellPoints: [] } : tree));
  const found: Followed = { distance: null, point: [0, 0, 0], pitches: from, whole: true };
  let steps = 0;
  for (let at = from; at <= to; steps++) {
    if (steps > MOST_STEPS) return { ...found, whole: false };
    const moved = movedTree(own, relativeMotion(mover.turning, other.turning, at), [0, 0, 0]);
    const near = leastDistance(moved, mate, within);
    const distance = near?.distance ?? within;
    if (near && distance < (found.distance ?? within))
      Object.assign(found, { distance, point: near.pointB, pitches: at });
    if (distance === 0) return found;
    const tooNear = found.distance !== null && found.distance < wanted - fine;
    at += tooNear ? (to - from) / LOOKS : Math.max(distance - wanted, fine) / speed;
  }
  return found;
}

/** How far the mover's points are from the axis that their speed is counted from, at most, mm. */
function reachOf(mover: { tree: DistanceTree; turning: Turning }, other: Turning, travel: number): number {
  const { turning, tree } = mover;
  const [x, y] = 'slide' in turning ? ('slide' in other ? [0, 0] : other.axis) : turning.axis;
  const [x0, y0, , x1, y1] = tree.boxes;
  const farthest = Math.hypot(
    Math.max(Math.abs(x0 - x), Math.abs(x1 - x)),
    Math.max(Math.abs(y0 - y), Math.abs(y1 - y)),
  );
  return farthest + ('slide' in turning ? (Math.abs(turning.slide) * travel) / 2 : 0);
}

import { involute } from '../../tooth/involute.js';
import type { Frame } from './frame.js';
import { contactOf, halfAngle, type Trial } from './trial.js';

/** What can forbid a choice of shifts. */
export type ShiftLimit =
  | 'undercut'
  | 'range'
  | 'tip-thickness'
  | 'tooth-thickness'
  | 'contact-ratio'
  | 'involute-interference'
  | 'trochoid-interference'
  | 'root-space'
  | 'neighbours';

/** How far the limits that may be relaxed are to be kept. */
export interface Wanted {
  /** Least normal tip thickness after relief, in normal modules. */
  tipThickness: number;
  /** Least normal tooth thickness on the reference circle after relief, in normal modules. */
  toothThickness: number;
  /** Least transverse contact ratio of both meshes. */
  contactRatio: number;
}

/** Shifts that are settled before any are looked for, in normal modules. */
export interface GivenShifts {
  sun?: number;
  planet?: number;
  ring?: number;
}

/** What else binds the choice. */
export interface Bounds {
  /** Least angle between two neighbouring planets, radians; they keep the gap. */
  neighbourAngle?: number;
  /** Gears whose shift was given: their undercut and range are their giver's own affair. */
  given?: GivenShifts;
}

/** Shifts that a parameter file can hold. */
export const SHIFT_RANGE = { gear: [-1, 1.5], ring: [-3, 4.5] } as const;
/** Shift kept beyond the undercut limit, so that the involute does not begin on the base circle itself. */
export const UNDERCUT_SPARE = 0.02;
/** Least width of the ring's root land, in normal modules: room for a root rounding. */
const LEAST_ROOT_LAND = 0.08;

/** Room to spare before each limit, about in normal modules, negative where it is passed; the least of them first. */
export function tightest(
  frame: Frame,
  trial: Trial,
  wanted: Wanted,
  bounds: Bounds,
): { limit: ShiftLimit; room: number } {
  let limit: ShiftLimit = 'range';
  let room = Number.POSITIVE_INFINITY;
  const ask = (name: ShiftLimit, found: number) => {
    // NaN (a circle out of reach) is no room at all.
    const spare = Number.isNaN(found) ? Number.NEGATIVE_INFINITY : found;
    if (spare < room) [limit, room] = [name, spare];
  };
  const { given = {}, neighbourAngle } = bounds;
  for (const part of ['sun', 'planet'] as const) {
    if (given[part] !== undefined) continue;
    ask('undercut', trial[part] - frame[part].leastShift - UNDERCUT_SPARE);
    ask('range', Math.min(trial[part] - SHIFT_RANGE.gear[0], SHIFT_RANGE.gear[1] - trial[part]));
  }
  if (given.ring === undefined)
    ask('range', Math.min(trial.ring - SHIFT_RANGE.ring[0], SHIFT_RANGE.ring[1] - trial.ring));
  ask('tip-thickness', thinnestTip(frame, trial) - wanted.tipThickness);
  ask('tooth-thickness', thinnestTooth(frame, trial) - wanted.toothThickness);
  ask('root-space', ringRootLand(frame, trial) - LEAST_ROOT_LAND);
  const contact = contactOf(frame, trial);
  ask('contact-ratio', Math.min(contact.inner, contact.outer) - wanted.contactRatio);
  // A tip that stands off its mate by the gap has its nearest point that much lower on the mate's flank.
  const line = trial.at.inner.line - frame.gap / frame.cosBaseHelix;
  ask('involute-interference', line - trial.planetReach - trial.sunForm);
  ask('involute-interference', line - trial.sunReach - trial.planetForm);
  ask('involute-interference', trial.ringRoot - trial.ringTip - frame.rack.addendum);
  ask('trochoid-interference', trochoidRoom(frame, trial) * trial.ringTip);
  if (neighbourAngle !== undefined)
    ask(
      'neighbours',
      2 * trial.at.centreDistance * Math.sin(neighbourAngle / 2) - 2 * trial.planetTip - frame.gap,
    );
  return { limit, room };
}

/** The thinnest tooth tip of all three gears in the normal section, relief taken off. */
function thinnestTip(frame: Frame, trial: Trial): number {
  const thickness = (part: 'sun' | 'planet' | 'ring', shift: number, radius: number) => {
    const { teeth, referenceRadius } = frame[part];
    const half = halfAngle(frame, part, shift, radius);
    const angle = part === 'ring' ? Math.PI / teeth - half : half;
    return (2 * radius * angle) / Math.hypot(1, (frame.tanHelix * radius) / referenceRadius);
  };
  return Math.min(
    thickness('sun', trial.sun, trial.sunTip),
    thickness('planet', trial.planet, trial.planetTip),
    thickness('ring', trial.ring, trial.ringTip),
  );
}

/** The thinnest tooth of all three gears on its reference circle in the normal section, relief taken off. */
function thinnestTooth(frame: Frame, { sun, planet, ring }: Trial): number {
  const cosNormal = 1 / Math.hypot(1, frame.tanNormal);
  const thickness = (part: 'sun' | 'planet' | 'ring', shift: number) =>
    Math.PI / 2 + 2 * shift * frame.tanNormal - (2 * frame[part].relief) / cosNormal;
  return Math.min(thickness('sun', sun), thickness('planet', planet), thickness('ring', -ring));
}

/** Width of the ring's tooth space on its root circle. */
function ringRootLand(frame: Frame, { ring, ringRoot }: Trial): number {
  return 2 * ringRoot * halfAngle(frame, 'ring', ring, ringRoot);
}

/** Trochoid interference of planet and ring, radians of ring rotation. Source: see `trochoidMargin`. */
function trochoidRoom(frame: Frame, { at, planetTip: r1, ringTip: r2 }: Trial): number {
  const a = at.centreDistance;
  if (r2 >= a + r1) return Number.POSITIVE_INFINITY;
  const { planet, ring } = frame;
  const working = at.outer.involuteWorking;
  const tip1 = involute(Math.acos(planet.baseRadius / r1));
  const tip2 = involute(Math.acos(Math.min(1, ring.baseRadius / r2)));
  const theta1 = Math.acos((r2 * r2 - r1 * r1 - a * a) / (2 * a * r1)) + tip1 - working;
  const theta2 = Math.acos((a * a + r2 * r2 - r1 * r1) / (2 * a * r2));
  return (theta1 * planet.teeth) / ring.teeth + working - tip2 - theta2;
}

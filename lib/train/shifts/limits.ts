import { type Range, ranges } from '../../spec/ranges.js';
import type { Frame } from './frame.js';
import { contactOf, halfAngle, involuteAt, type Trial } from './trial.js';

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

/** Shift kept beyond the undercut limit, so that the involute does not begin on the base circle itself. */
export const UNDERCUT_SPARE = 0.02;
/** Least width of the ring's root land, in normal modules: room for a root rounding. */
const LEAST_ROOT_LAND = 0.08;

/** What each room of `roomsOf` is of. */
export const ROOMS: readonly ShiftLimit[] = [
  'undercut',
  'undercut',
  'range',
  'range',
  'range',
  'tip-thickness',
  'tip-thickness',
  'tip-thickness',
  'tooth-thickness',
  'tooth-thickness',
  'tooth-thickness',
  'root-space',
  'contact-ratio',
  'contact-ratio',
  'involute-interference',
  'involute-interference',
  'involute-interference',
  'trochoid-interference',
  'neighbours',
];

/** Least profile shift of sun or planets that is within reach, in normal modules. */
export function leastShiftOf(frame: Frame, part: 'sun' | 'planet'): number {
  return Math.max(ranges.shift[0], frame[part].leastShift + UNDERCUT_SPARE);
}

const UNASKED = Number.POSITIVE_INFINITY;

/** Room to spare before each limit, about in normal modules, negative where it is passed; the least of them first. */
export function tightest(
  frame: Frame,
  trial: Trial,
  wanted: Wanted,
  bounds: Bounds,
): { limit: ShiftLimit; room: number } {
  const rooms = roomsOf(frame, trial, wanted, bounds);
  let least = 0;
  for (let i = 1; i < rooms.length; i++) if (rooms[i] < rooms[least]) least = i;
  return { limit: ROOMS[least], room: rooms[least] };
}

/**
 * Room to spare before every limit, in the order of `ROOMS`, about in normal modules; +∞ where nothing is asked, −∞
 * where a circle is out of reach.
 */
export function roomsOf(
  frame: Frame,
  trial: Trial,
  wanted: Wanted,
  { given = {}, neighbourAngle }: Bounds,
): number[] {
  const { sun, planet, ring } = trial;
  const least = (part: 'sun' | 'planet') => frame[part].leastShift + UNDERCUT_SPARE;
  const between = (shift: number, [low, high]: Range) => Math.min(shift - low, high - shift);
  const contact = contactOf(frame, trial);
  // A tip that stands off its mate by the gap has its nearest point that much lower on the mate's flank.
  const line = trial.at.inner.line - frame.gap / frame.cosBaseHelix;
  const rooms = [
    given.sun === undefined ? sun - least('sun') : UNASKED,
    given.planet === undefined ? planet - least('planet') : UNASKED,
    given.sun === undefined ? between(sun, ranges.shift) : UNASKED,
    given.planet === undefined ? between(planet, ranges.shift) : UNASKED,
    given.ring === undefined ? between(ring, ranges.ringShift) : UNASKED,
    tipOf(frame, 'sun', sun, trial.sunTip) - wanted.tipThickness,
    tipOf(frame, 'planet', planet, trial.planetTip) - wanted.tipThickness,
    tipOf(frame, 'ring', ring, trial.ringTip) - wanted.tipThickness,
    toothOf(frame, 'sun', sun) - wanted.toothThickness,
    toothOf(frame, 'planet', planet) - wanted.toothThickness,
    toothOf(frame, 'ring', -ring) - wanted.toothThickness,
    ringRootLand(frame, trial) - LEAST_ROOT_LAND,
    contact.inner - wanted.contactRatio,
    contact.outer - wanted.contactRatio,
    line - trial.planetReach - trial.sunForm,
    line - trial.sunReach - trial.planetForm,
    trial.ringRoot - trial.ringTip - frame.rack.addendum,
    trochoidRoom(frame, trial) * trial.ringTip,
    neighbourAngle === undefined
      ? UNASKED
      : 2 * trial.at.centreDistance * Math.sin(neighbourAngle / 2) - 2 * trial.planetTip - frame.gap,
  ];
  // NaN (a circle out of reach) is no room at all.
  for (let i = 0; i < rooms.length; i++) if (Number.isNaN(rooms[i])) rooms[i] = Number.NEGATIVE_INFINITY;
  return rooms;
}

/** Thickness of a tooth tip in the normal section, relief taken off. */
export function tipOf(frame: Frame, part: 'sun' | 'planet' | 'ring', shift: number, radius: number): number {
  const { teeth, referenceRadius } = frame[part];
  const half = halfAngle(frame, part, shift, radius);
  const angle = part === 'ring' ? Math.PI / teeth - half : half;
  const slope = (frame.tanHelix * radius) / referenceRadius;
  return (2 * radius * angle) / Math.sqrt(1 + slope * slope);
}

/** Thickness of a tooth on its reference circle in the normal section, relief taken off; the ring's shift negated. */
function toothOf(frame: Frame, part: 'sun' | 'planet' | 'ring', shift: number): number {
  const cosNormal = 1 / Math.sqrt(1 + frame.tanNormal * frame.tanNormal);
  return Math.PI / 2 + 2 * shift * frame.tanNormal - (2 * frame[part].relief) / cosNormal;
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
  const tip1 = involuteAt(planet.baseRadius, r1);
  const tip2 = involuteAt(ring.baseRadius, r2);
  const theta1 = Math.acos((r2 * r2 - r1 * r1 - a * a) / (2 * a * r1)) + tip1 - working;
  const theta2 = Math.acos((a * a + r2 * r2 - r1 * r1) / (2 * a * r2));
  return (theta1 * planet.teeth) / ring.teeth + working - tip2 - theta2;
}

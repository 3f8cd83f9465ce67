import type { Motion } from '../../fit/play/contact.js';

/**
 * How a body moves in the frame of the planets' axes (of a pair: of its axes) while the train runs on by one pitch:
 * about an axis parallel to z, or along x.
 */
export type Turning =
  /** `teeth` of the gear that it turns with, negative where it turns clockwise; 0 for a body that stands still. */
  { axis: readonly [number, number]; teeth: number } | { slide: number };

/** Radians, counter-clockwise, that a body turns by a pitch. */
export function turnByPitch(turning: Turning): number {
  return 'slide' in turning || turning.teeth === 0 ? 0 : (2 * Math.PI) / turning.teeth;
}

/** Whether two bodies keep their places against each other. */
export function turnTogether(a: Turning, b: Turning): boolean {
  if ('slide' in a || 'slide' in b) return 'slide' in a && 'slide' in b && a.slide === b.slide;
  return a.teeth === b.teeth && (a.teeth === 0 || apartOf(a.axis, b.axis) === 0);
}

export function apartOf(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** Where a body is after some pitches: turned about the origin by `angle`, then moved. */
interface Pose {
  angle: number;
  x: number;
  y: number;
}

function poseAt(turning: Turning, pitches: number): Pose {
  if ('slide' in turning) return { angle: 0, x: turning.slide * pitches, y: 0 };
  const angle = turnByPitch(turning) * pitches;
  const [x, y] = turning.axis;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { angle, x: x - x * cos + y * sin, y: y - x * sin - y * cos };
}

/** The motion, about the origin, that brings `mover` where it is for someone on `other` after some pitches. */
export function relativeMotion(mover: Turning, other: Turning, pitches: number): Motion {
  const [a, b] = [poseAt(mover, pitches), poseAt(other, pitches)];
  const [cos, sin] = [Math.cos(b.angle), Math.sin(b.angle)];
  const [x, y] = [a.x - b.x, a.y - b.y];
  return [x * cos + y * sin, y * cos - x * sin, 0, 0, 0, a.angle - b.angle];
}

/**
 * The most that a point of `mover` moves against `other` by a pitch, mm.
 * @param reach the point's distance from the mover's axis; of a body that slides, from the other's axis at the farthest
 */
export function speedAgainst(mover: Turning, other: Turning, reach: number): number {
  const [a, b] = [turnByPitch(mover), turnByPitch(other)];
  if ('slide' in mover) return Math.abs(b) * reach + Math.abs(mover.slide);
  if ('slide' in other) return Math.abs(a) * reach + Math.abs(other.slide);
  return Math.abs(a - b) * reach + Math.abs(b) * apartOf(mover.axis, other.axis);
}

/**
 * Pitches after which two bodies stand against each other as before.
 * @param travel of a body that slides: pitches that it goes from one end to the other
 */
export function period(a: Turning, b: Turning, travel: number): { from: number; to: number } {
  if ('slide' in a || 'slide' in b) return { from: -travel / 2, to: travel / 2 };
  const [m, n] = [Math.abs(a.teeth), Math.abs(b.teeth)];
  if (m === 0 || n === 0) return { from: 0, to: Math.max(m, n) };
  return { from: 0, to: (m * n) / gcd(m, n) };
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

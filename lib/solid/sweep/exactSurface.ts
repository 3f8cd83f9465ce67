import type { ToothProfile } from '../../tooth/profile.js';
import { distanceFromTrochoid, pointOnTrochoid } from '../../tooth/rackRoot.js';
import { rollAt } from '../../tooth/rollAt.js';
import type { Segment, Trochoid } from '../../tooth/segments.js';
import { faceRadius, type Sweep } from './helix.js';

/**
 * One exact surface of a gear body in the gear's own frame, right-handed, turned back to z = 0 and into the pitch of the
 * tooth on +x. Lengths in mm, angles in radians.
 */
export type ExactSurface =
  | { kind: 'cylinder'; radius: number }
  /** A helicoid: of an involute, a circular arc or a rack's root curve. `scale` is base radius × cos β_b. */
  | { kind: 'involute'; baseRadius: number; start: number; turn: 1 | -1; scale: number }
  | { kind: 'round'; centre: readonly [number, number]; radius: number }
  | { kind: 'trochoid'; segment: Trochoid; points: Float64Array }
  /** About the axis: its radius at the end face, and by how much it grows for one mm away from it. */
  | { kind: 'cone'; radius: number; slope: number; sine: number };

/** The exact surface that a segment of the outline sweeps. */
export function sweptSurface(profile: ToothProfile, segment: Segment): ExactSurface {
  switch (segment.kind) {
    case 'arc':
      return { kind: 'cylinder', radius: segment.radius };
    case 'involute': {
      const { baseRadius, start, turn } = segment;
      const scale = baseRadius * Math.cos(profile.sizes.baseHelixAngle);
      return { kind: 'involute', baseRadius, start, turn, scale };
    }
    case 'round':
      return { kind: 'round', centre: segment.centre, radius: segment.radius };
    case 'trochoid':
      return { kind: 'trochoid', segment, points: finePoints(segment) };
  }
}

/**
 * Distance of a point from an exact surface, mm. Numbers that are handed on one by one are made objects of in between,
 * by the million: so the point is read from an array.
 * For an involute the distance between two involutes of one base circle is base radius × the turn between them,
 * everywhere; along the normal of the helicoid it is shorter by cos β_b. For root curves the transverse distance
 * is returned, which is never less than the distance in space.
 * @param point its radius, polar angle and height above the nearer end face
 */
export function distanceFrom(surface: ExactSurface, point: Float64Array): number {
  const radius = point[0];
  const angle = point[1];
  switch (surface.kind) {
    case 'cylinder':
      return Math.abs(radius - surface.radius);
    case 'involute': {
      const roll = rollAt(surface.baseRadius, radius);
      return Math.abs(angle - surface.turn * (roll - Math.atan(roll)) - surface.start) * surface.scale;
    }
    case 'round': {
      const x = radius * Math.cos(angle) - surface.centre[0];
      const y = radius * Math.sin(angle) - surface.centre[1];
      return Math.abs(Math.sqrt(x * x + y * y) - surface.radius);
    }
    case 'trochoid':
      return trochoidDistance(surface.segment, surface.points, point);
    case 'cone':
      return Math.abs(radius - surface.radius - surface.slope * point[2]) * surface.sine;
  }
}

/** The cone that bevels the tips at the nearer end face. */
export function bevelSurface(profile: ToothProfile, sweep: Sweep): ExactSurface {
  return coneSurface(profile, sweep, profile.gear.internal ? -1 : 1);
}

/** The cone that closes the tooth spaces at the nearer end face: the bevel's, leaning the other way. */
export function lipSurface(profile: ToothProfile, sweep: Sweep): ExactSurface {
  return coneSurface(profile, sweep, profile.gear.internal ? 1 : -1);
}

/** @param outward 1 where the cone widens away from the end face, −1 where it narrows */
function coneSurface(profile: ToothProfile, sweep: Sweep, outward: 1 | -1): ExactSurface {
  const slope = outward / Math.tan(sweep.bevelAngle);
  return { kind: 'cone', radius: faceRadius(profile, sweep), slope, sine: Math.sin(sweep.bevelAngle) };
}

/** Steps that a root curve is divided in to find the point near which its foot is sought: a power of two. */
const FINE = 128;

/** A division is tried again and again on the same curves, so their points are kept as long as the curves are. */
const known = new WeakMap<Trochoid, Float64Array>();

/** x and y of the points, in the frame of `pointOnTrochoid`. */
function finePoints(segment: Trochoid): Float64Array {
  const found = known.get(segment);
  if (found) return found;
  const points = new Float64Array(2 * (FINE + 1));
  for (let i = 0; i <= FINE; i++)
    points.set(pointOnTrochoid(segment.root, segment.from + ((segment.to - segment.from) * i) / FINE), 2 * i);
  known.set(segment, points);
  return points;
}

/**
 * Distance to a generated root curve: the nearest of many points on it, then the foot on the curve itself.
 * Halving strides find the nearest point because distance has one minimum along so short and round a curve.
 */
function trochoidDistance(
  { root, from, to, middle, mirrored }: Trochoid,
  points: Float64Array,
  point: Float64Array,
): number {
  // Turned, and mirrored, into the frame of the space's middle.
  const radius = point[0];
  const angle = point[1];
  const x = radius * Math.cos(angle - middle);
  const y = (mirrored ? -radius : radius) * Math.sin(angle - middle);
  const nearest = nearestPoint(points, x, y);
  const before = Math.max(0, nearest - 1);
  const after = Math.min(FINE, nearest + 1);
  const dx = points[2 * after] - points[2 * before];
  const dy = points[2 * after + 1] - points[2 * before + 1];
  const along = ((x - points[2 * nearest]) * dx + (y - points[2 * nearest + 1]) * dy) / (dx * dx + dy * dy);
  const at = Math.min(FINE, Math.max(0, nearest + along * (after - before)));
  // The foot is found only nearly, so what is left along the tangent is not counted but at the curve's ends.
  const atEnd = at === 0 || at === FINE;
  return distanceFromTrochoid(root, from + ((to - from) * at) / FINE, x, y, atEnd);
}

/** Number of the fine point nearest to (x, y): the best of a few, then halving strides from there. */
function nearestPoint(points: Float64Array, x: number, y: number): number {
  let nearest = 0;
  let least = squareTo(points, 0, x, y);
  for (let i = 16; i <= FINE; i += 16) {
    const square = squareTo(points, i, x, y);
    if (square >= least) continue;
    least = square;
    nearest = i;
  }
  for (let stride = 8; stride >= 1; stride >>= 1) {
    const lower = nearest - stride;
    const upper = nearest + stride;
    const below = lower < 0 ? least : squareTo(points, lower, x, y);
    if (below < least) {
      least = below;
      nearest = lower;
      continue;
    }
    const above = upper > FINE ? least : squareTo(points, upper, x, y);
    if (above >= least) continue;
    least = above;
    nearest = upper;
  }
  return nearest;
}

function squareTo(points: Float64Array, i: number, x: number, y: number): number {
  return (points[2 * i] - x) ** 2 + (points[2 * i + 1] - y) ** 2;
}

import type { ToothProfile } from '../../tooth/profile.js';
import { rollAt } from '../../tooth/rollAt.js';
import { pointOn, type Segment, type Trochoid } from '../../tooth/segments.js';
import { faceRadius, type Sweep } from './helix.js';

/**
 * Distance from a point to one exact surface of a gear body, mm. The point is given in the gear's own frame,
 * right-handed, turned back to z = 0 and into the pitch of the tooth on +x: radius and polar angle, z axial counted
 * from the nearer end face.
 */
export type SurfaceDistance = (radius: number, angle: number, z: number) => number;

/**
 * The exact surface that a segment of the outline sweeps.
 * For an involute the distance between two involutes of one base circle is base radius × the turn between them,
 * everywhere; along the normal of the helicoid it is shorter by cos β_b. For root curves the transverse distance
 * is returned, which is never less than the distance in space.
 */
export function sweptSurface(profile: ToothProfile, segment: Segment): SurfaceDistance {
  switch (segment.kind) {
    case 'arc':
      return (radius) => Math.abs(radius - segment.radius);
    case 'involute': {
      const { baseRadius, start, turn } = segment;
      const scale = baseRadius * Math.cos(profile.sizes.baseHelixAngle);
      return (radius, angle) => {
        const roll = rollAt(baseRadius, radius);
        return Math.abs(angle - turn * (roll - Math.atan(roll)) - start) * scale;
      };
    }
    case 'round':
      return (radius, angle) => {
        const x = radius * Math.cos(angle) - segment.centre[0];
        const y = radius * Math.sin(angle) - segment.centre[1];
        return Math.abs(Math.sqrt(x * x + y * y) - segment.radius);
      };
    case 'trochoid': {
      const distance = trochoidDistance(segment);
      return (radius, angle) => distance(radius * Math.cos(angle), radius * Math.sin(angle));
    }
  }
}

/** The cone that bevels the tips at the nearer end face. */
export function bevelSurface(profile: ToothProfile, sweep: Sweep): SurfaceDistance {
  return coneSurface(profile, sweep, profile.gear.internal ? -1 : 1);
}

/** The cone that closes the tooth spaces at the nearer end face: the bevel's, leaning the other way. */
export function lipSurface(profile: ToothProfile, sweep: Sweep): SurfaceDistance {
  return coneSurface(profile, sweep, profile.gear.internal ? 1 : -1);
}

/** @param outward 1 where the cone widens away from the end face, −1 where it narrows */
function coneSurface(profile: ToothProfile, sweep: Sweep, outward: 1 | -1): SurfaceDistance {
  const radiusAtFace = faceRadius(profile, sweep);
  const slope = outward / Math.tan(sweep.bevelAngle);
  const sine = Math.sin(sweep.bevelAngle);
  return (radius, _, z) => Math.abs(radius - radiusAtFace - slope * z) * sine;
}

/** Points that a root curve is searched on before its exact nearest point is taken. */
const FINE = 128;
/** Step to a neighbouring point that gives the tangent, in points. */
const TANGENT = 1e-3;

/** A division is tried again and again on the same curves, so their points are kept as long as the curves are. */
const known = new WeakMap<Trochoid, [number, number][]>();

function finePoints(segment: Trochoid): [number, number][] {
  const found = known.get(segment);
  if (found) return found;
  const points = Array.from({ length: FINE + 1 }, (_, i) =>
    pointOn(segment, segment.from + ((segment.to - segment.from) * i) / FINE),
  );
  known.set(segment, points);
  return points;
}

/**
 * Distance to a generated root curve: the nearest of many points on it, then the foot on the curve itself.
 * Halving strides find the nearest point because distance has one minimum along so short and round a curve.
 */
function trochoidDistance(segment: Trochoid): (x: number, y: number) => number {
  const parameter = (i: number) => segment.from + ((segment.to - segment.from) * i) / FINE;
  const points = finePoints(segment);
  const toPoint = (i: number, x: number, y: number) => (points[i][0] - x) ** 2 + (points[i][1] - y) ** 2;
  return (x, y) => {
    let nearest = 0;
    for (let i = 16; i <= FINE; i += 16) if (toPoint(i, x, y) < toPoint(nearest, x, y)) nearest = i;
    for (let stride = 8; stride >= 1; stride >>= 1) {
      const [before, after] = [nearest - stride, nearest + stride];
      if (before >= 0 && toPoint(before, x, y) < toPoint(nearest, x, y)) nearest = before;
      else if (after <= FINE && toPoint(after, x, y) < toPoint(nearest, x, y)) nearest = after;
    }
    const [ax, ay] = points[Math.max(0, nearest - 1)];
    const [bx, by] = points[Math.min(FINE, nearest + 1)];
    const [dx, dy] = [bx - ax, by - ay];
    const along = ((x - points[nearest][0]) * dx + (y - points[nearest][1]) * dy) / (dx * dx + dy * dy);
    const span = Math.min(FINE, nearest + 1) - Math.max(0, nearest - 1);
    const at = Math.min(FINE, Math.max(0, nearest + along * span));
    const [px, py] = pointOn(segment, parameter(at));
    if (at === 0 || at === FINE) return Math.hypot(x - px, y - py);
    // The foot is found only nearly, so what is left along the tangent is taken off.
    const [qx, qy] = pointOn(segment, parameter(at + TANGENT));
    return Math.abs((x - px) * (qy - py) - (y - py) * (qx - px)) / Math.hypot(qx - px, qy - py);
  };
}

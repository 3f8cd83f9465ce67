import type { ToothProfile } from '../../tooth/profile.js';
import { rollAt } from '../../tooth/rollAt.js';
import { pointOn, type Segment, type Trochoid } from '../../tooth/segments.js';
import { faceRadius, type Sweep } from './helix.js';

/**
 * Distance from a point to one exact surface of a gear body, mm. The point is given in the gear's own frame,
 * right-handed, turned back to z = 0 and into the pitch of the tooth on +x: (x, y) transverse, z axial counted
 * from the nearer end face.
 */
export type SurfaceDistance = (x: number, y: number, z: number) => number;

/**
 * The exact surface that a segment of the outline sweeps.
 * For an involute the distance between two involutes of one base circle is base radius × the turn between them,
 * everywhere; along the normal of the helicoid it is shorter by cos β_b. For root curves the transverse distance
 * is returned, which is never less than the distance in space.
 */
export function sweptSurface(profile: ToothProfile, segment: Segment): SurfaceDistance {
  switch (segment.kind) {
    case 'arc':
      return (x, y) => Math.abs(Math.hypot(x, y) - segment.radius);
    case 'involute': {
      const { baseRadius, start, turn } = segment;
      const scale = baseRadius * Math.cos(profile.sizes.baseHelixAngle);
      return (x, y) => {
        const roll = rollAt(baseRadius, Math.hypot(x, y));
        return Math.abs(Math.atan2(y, x) - turn * (roll - Math.atan(roll)) - start) * scale;
      };
    }
    case 'round':
      return (x, y) => Math.abs(Math.hypot(x - segment.centre[0], y - segment.centre[1]) - segment.radius);
    case 'trochoid':
      return trochoidDistance(segment);
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
  return (x, y, z) => Math.abs(Math.hypot(x, y) - radiusAtFace - slope * z) * sine;
}

/** Points that a root curve is searched on before its exact nearest point is taken. */
const FINE = 128;
/** Step to a neighbouring point that gives the tangent, in points. */
const TANGENT = 1e-3;

/**
 * Distance to a generated root curve: the nearest of many points on it, then the foot on the curve itself.
 * Halving strides find the nearest point because distance has one minimum along so short and round a curve.
 */
function trochoidDistance(segment: Trochoid): SurfaceDistance {
  const parameter = (i: number) => segment.from + ((segment.to - segment.from) * i) / FINE;
  const points = Array.from({ length: FINE + 1 }, (_, i) => pointOn(segment, parameter(i)));
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

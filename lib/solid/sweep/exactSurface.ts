import type { ToothProfile } from '../../tooth/profile.js';
import { pointOn, rollAt, type Segment, type Trochoid } from '../../tooth/segments.js';
import type { Sweep } from './helix.js';

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
  const outward = profile.gear.internal ? -1 : 1;
  const radiusAtFace = profile.tipRadius - outward * sweep.bevelSize;
  const slope = outward / Math.tan(sweep.bevelAngle);
  const sine = Math.sin(sweep.bevelAngle);
  return (x, y, z) => Math.abs(Math.hypot(x, y) - radiusAtFace - slope * z) * sine;
}

/** Chords of the root curve fine enough to stand for it: their sagitta is far below any tolerance asked for. */
const FINE = 256;

function trochoidDistance(segment: Trochoid): SurfaceDistance {
  const points = Array.from({ length: FINE + 1 }, (_, i) =>
    pointOn(segment, segment.from + ((segment.to - segment.from) * i) / FINE),
  );
  const toPoint = (i: number, x: number, y: number) => (points[i][0] - x) ** 2 + (points[i][1] - y) ** 2;
  return (x, y) => {
    let nearest = 0;
    for (let i = 16; i <= FINE; i += 16) if (toPoint(i, x, y) < toPoint(nearest, x, y)) nearest = i;
    for (let stride = 8; stride >= 1; stride >>= 1)
      for (const i of [nearest - stride, nearest + stride])
        if (i >= 0 && i <= FINE && toPoint(i, x, y) < toPoint(nearest, x, y)) nearest = i;
    return Math.min(
      nearest > 0 ? segmentDistance(points[nearest - 1], points[nearest], x, y) : Number.POSITIVE_INFINITY,
      nearest < FINE ? segmentDistance(points[nearest], points[nearest + 1], x, y) : Number.POSITIVE_INFINITY,
    );
  };
}

function segmentDistance(a: [number, number], b: [number, number], x: number, y: number): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

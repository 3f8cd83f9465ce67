import type { ToothProfile } from './profile.js';
import { sampleSegment } from './sample.js';
import { pointOn } from './segments.js';

/** A whole gear's transverse outline as a closed polyline. */
export interface GearOutline {
  /** x, y of point i at 2i, mm, counter-clockwise in the gear's own frame; the last point is not the first again. */
  points: Float64Array;
  /** Which segment of its tooth (0 … 5, see `ToothProfile.segments`) the line from point i to the next lies on. */
  segments: Uint8Array;
}

/**
 * The outline of all teeth, points on the exact curves.
 * @param sagitta largest distance of a chord from the curve, mm, > 0
 */
export function gearOutline(profile: ToothProfile, sagitta: number): GearOutline {
  const tooth: [number, number][] = [];
  const kinds: number[] = [];
  profile.segments.forEach((segment, kind) => {
    for (const t of sampleSegment(segment, sagitta).slice(0, -1)) {
      tooth.push(pointOn(segment, t));
      kinds.push(kind);
    }
  });
  const { teeth } = profile.gear;
  const points = new Float64Array(2 * tooth.length * teeth);
  const segments = new Uint8Array(tooth.length * teeth);
  for (let i = 0; i < teeth; i++) {
    const cos = Math.cos((2 * Math.PI * i) / teeth);
    const sin = Math.sin((2 * Math.PI * i) / teeth);
    tooth.forEach(([x, y], j) => {
      const at = i * tooth.length + j;
      points[2 * at] = x * cos - y * sin;
      points[2 * at + 1] = x * sin + y * cos;
      segments[at] = kinds[j];
    });
  }
  return { points, segments };
}

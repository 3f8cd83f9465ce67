import { type GearOutline, gearOutline } from '../../tooth/outline.js';
import type { ToothProfile } from '../../tooth/profile.js';
import { chunkBoxes, type Strand } from './outlineDistance.js';

/** A gear's outline with its shortening from plane to space (see `Strand`), one figure a line. */
export interface PreparedOutline extends GearOutline {
  shortening: Float64Array;
}

/**
 * The outline with its shortening. A surface swept along a helix that turns by k per mm has
 * the normal (n, −k r×n) at the point r whose outline normal is n.
 * @param sagitta largest distance of a chord from the curve, mm
 */
export function preparedOutline(profile: ToothProfile, sagitta: number): PreparedOutline {
  const outline = gearOutline(profile, sagitta);
  const turn = Math.tan(profile.sizes.helixAngle) / profile.sizes.referenceRadius;
  const count = outline.segments.length;
  const shortening = new Float64Array(count);
  const { points } = outline;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const [dx, dy] = [points[2 * j] - points[2 * i], points[2 * j + 1] - points[2 * i + 1]];
    const [x, y] = [(points[2 * i] + points[2 * j]) / 2, (points[2 * i + 1] + points[2 * j + 1]) / 2];
    const lever = (x * dx + y * dy) / Math.hypot(dx, dy);
    shortening[i] = 1 / Math.sqrt(1 + (turn * lever) ** 2);
  }
  return { ...outline, shortening };
}

/**
 * The runs of an outline, one segment of one tooth each, that have a point where `near` holds, placed.
 * @param rotation radians; dx, dy mm
 */
export function strandsNear(
  outline: PreparedOutline,
  rotation: number,
  dx: number,
  dy: number,
  near: (x: number, y: number) => boolean,
): Strand[] {
  const { points, segments, shortening } = outline;
  const cos = Math.cos(rotation);
  const sin = Math.sin(rotation);
  const count = segments.length;
  const runs: Strand[] = [];
  for (let from = 0; from < count; ) {
    let to = from + 1;
    while (to < count && segments[to] === segments[from]) to++;
    const placed = new Float64Array(2 * (to - from + 1));
    let within = false;
    for (let i = from; i <= to; i++) {
      const x = points[2 * (i % count)];
      const y = points[2 * (i % count) + 1];
      const px = x * cos - y * sin + dx;
      const py = x * sin + y * cos + dy;
      placed[2 * (i - from)] = px;
      placed[2 * (i - from) + 1] = py;
      within ||= near(px, py);
    }
    if (within) {
      const own = shortening.subarray(from, to);
      runs.push({
        points: placed,
        segment: segments[from],
        shortening: own,
        leastShortening: own.reduce((a, b) => Math.min(a, b)),
        boxes: chunkBoxes(placed),
      });
    }
    from = to;
  }
  return runs;
}

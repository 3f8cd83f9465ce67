const INCH = 25.4;

/**
 * The small-parts cylinder: open at the top, its floor slanted by 45°, so that its depth grows by the diameter
 * from one side to the other. mm.
 * Source: 16 CFR 1501.4 and its figure 1: 1.25 in across, 1.00 in to 2.25 in deep, the inch figures ruling (text
 * read, 1.00 in from memory); the Canadian Toys Regulations SOR/2011-17 give 31.7, 25.4 and 57.1 mm (read).
 */
export const smallPartsCylinder = {
  radius: (1.25 * INCH) / 2,
  /** Depth on its axis: half way from 1.00 in to 2.25 in. */
  depthOnAxis: ((1 + 2.25) / 2) * INCH,
} as const;

/**
 * How a body is held in the cylinder: nine numbers, the rows being unit vectors in the body's frame. The third one
 * points out of the mouth, the first one square to it to the deepest side.
 */
export type Pose = Float64Array;

/**
 * How far a point would have to leave, mm, the body being posed and the cylinder's axis standing at (cx, cy) in the
 * plane of the first two rows: positive when all points lie inside, and every wall could come in by that much.
 * The mouth is level with the highest point. The depth left falls with cx alone, because the floor is a plane.
 * @param points x, y, z of point i at 3i, mm
 */
export function marginAt(points: Float64Array, pose: Pose, cx: number, cy: number): number {
  let farthest = 0;
  let top = Number.NEGATIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < points.length; i += 3) {
    const px = points[i];
    const py = points[i + 1];
    const pz = points[i + 2];
    const x = pose[0] * px + pose[1] * py + pose[2] * pz;
    const y = pose[3] * px + pose[4] * py + pose[5] * pz;
    const z = pose[6] * px + pose[7] * py + pose[8] * pz;
    const away = (x - cx) * (x - cx) + (y - cy) * (y - cy);
    if (away > farthest) farthest = away;
    if (z > top) top = z;
    if (x + z < lowest) lowest = x + z;
  }
  const { radius, depthOnAxis } = smallPartsCylinder;
  return Math.min(radius - Math.sqrt(farthest), depthOnAxis - top + lowest - cx);
}

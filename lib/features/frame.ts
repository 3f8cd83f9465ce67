import { mirroredPoints, type Point, placedPoints } from '../stack/contour.js';

/**
 * How a part lies on the bed against its own frame: bodies are made with a tooth on +x and right-handed, then
 * mirrored (y → −y) where they are left-handed, and turned into their place.
 */
export interface Frame {
  /** Turn of the part in its place, radians. */
  rotation: number;
  mirrored: boolean;
}

/** An outline given as it is to lie on the bed, about the part's axis, in the frame in which the body is made. */
export function inFrame(points: readonly Point[], { rotation, mirrored }: Frame): Point[] {
  const turned = placedPoints(points, -rotation, [0, 0]);
  return mirrored ? mirroredPoints(turned) : turned;
}

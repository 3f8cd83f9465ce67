import { polar } from '../../tooth/polar.js';
import { type Column, column, type Level } from '../stack/column.js';
import { type Point, placedPoints } from '../stack/contour.js';
import { type Frame, inFrame } from './frame.js';

/** The bed's own frame. */
export const bedFrame: Frame = { rotation: 0, mirrored: false };

/** Places of holes on a circle about the axis, the first one on +x, each with its direction, radians. */
export function boltPlaces(circle: number, count: number): { angle: number; centre: Point }[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return { angle, centre: polar(circle / 2, angle) };
  });
}

/** The same hole at every place of a circle, turned outward. @param levels of the hole about its own axis */
export function boltColumns(levels: readonly Level[], circle: number, count: number, frame: Frame): Column[] {
  return boltPlaces(circle, count).map(({ angle, centre }) =>
    column(
      levels.map(({ z, outline }) => ({ z, outline: inFrame(placedPoints(outline, angle, centre), frame) })),
      'outside',
    ),
  );
}

import type { CarrierSizes } from '../../fit/carrier/carrierSizes.js';
import type { Station } from '../../fit/carrier/pinShape.js';
import { type Contour, chordsOf, circlePoints, contourAt, type Point } from '../../stack/contour.js';

/** What joins the plates, or stands on one: its outlines from the lower end to the upper one. */
export interface Column {
  contours: Contour[];
}

/** A body of revolution about an axis, every outline with equally many points. */
export function revolved(stations: readonly Station[], axis: Point, tolerance: number): Contour[] {
  const count = chordsOf(Math.max(...stations.map(([, radius]) => radius)), tolerance / 4);
  return stations.map(([z, radius]) => contourAt(circlePoints(radius, tolerance, axis, count), z));
}

/** A pin through every planet; its end is narrower where it stands on the bed, against first-layer growth. */
export function pinColumns(
  { plates, chamfer }: CarrierSizes,
  stations: readonly Station[],
  axes: readonly Point[],
  tolerance: number,
): Column[] {
  const [[z, radius], ...rest] = stations;
  const onBed = plates[0].side === 'above';
  const straight = rest[0][0] - z;
  const cut = Math.min(chamfer, radius / 3, straight / 2);
  const foot: Station[] = onBed
    ? [
        [z, radius - cut],
        [z + cut, radius],
      ]
    : [[z, radius]];
  return axes.map((axis) => ({ contours: revolved([...foot, ...rest], axis, tolerance) }));
}

/** A post in every opening between planets. */
export function postColumns({ plates, posts, pinEnds }: CarrierSizes): Column[] {
  const onBed = plates[0].side === 'above';
  const [from, to] = pinEnds;
  return posts.map(({ body, foot, cut }) => ({
    contours:
      onBed && cut > 0
        ? [contourAt(foot, from), contourAt(body, from + cut), contourAt(body, to)]
        : [contourAt(body, from), contourAt(body, to)],
  }));
}

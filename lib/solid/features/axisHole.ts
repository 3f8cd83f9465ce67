import type { NutPocket, ScrewHole } from '../../spec/features/types.js';
import type { Level } from '../stack/column.js';
import { column } from '../stack/column.js';
import { chordsOf, circlePoints, polygonPoints, reachOf } from '../stack/contour.js';
import type { Feature } from '../stack/stack.js';

/** A hole for a screw: its diameter, and what is at each of its ends. Lengths in mm. */
export interface HoleShape {
  diameter: number;
  bottom?: HoleEnd;
  top?: HoleEnd;
}

/** A 90° countersink, or a hexagonal pocket for a nut. */
export type HoleEnd = { headDiameter: number } | { acrossFlats: number; depth: number };

/** The shape of a screw's hole and a nut's pocket about one axis. */
export function holeShape(screw?: ScrewHole, nut?: NutPocket): HoleShape {
  const shape: HoleShape = { diameter: (screw ?? nut!).diameter };
  if (screw && screw.countersink !== 'none') shape[screw.countersink] = { headDiameter: screw.headDiameter };
  if (nut) shape[nut.at] = { acrossFlats: nut.acrossFlats, depth: nut.depth };
  return shape;
}

/**
 * Outlines of a screw's hole about the origin, from height to height. Heads narrow at 45°; a nut's pocket that opens
 * below ends in a cone at 45° from its corners, so that neither needs support.
 */
export function holeLevels(
  { diameter, bottom, top }: HoleShape,
  from: number,
  to: number,
  tolerance: number,
): Level[] {
  const ends = [bottom, top].flatMap((end) => (end && 'headDiameter' in end ? [end.headDiameter] : []));
  const count = chordsOf(Math.max(diameter, ...ends) / 2, tolerance);
  const round = (across: number) => circlePoints(across / 2, tolerance, [0, 0], count);
  const shaft = round(diameter);
  const levels: Level[] = [];
  if (bottom && 'headDiameter' in bottom)
    levels.push(
      { z: from, outline: round(bottom.headDiameter) },
      { z: from + (bottom.headDiameter - diameter) / 2, outline: shaft },
    );
  else if (bottom) {
    const hexagon = polygonPoints(6, bottom.acrossFlats);
    const cone = reachOf(hexagon) - diameter / 2;
    levels.push(
      { z: from, outline: hexagon },
      { z: from + bottom.depth, outline: hexagon },
      { z: from + bottom.depth + cone, outline: shaft },
    );
  } else levels.push({ z: from, outline: shaft });
  if (top && 'headDiameter' in top)
    levels.push(
      { z: to - (top.headDiameter - diameter) / 2, outline: shaft },
      { z: to, outline: round(top.headDiameter) },
    );
  else if (top) {
    const hexagon = polygonPoints(6, top.acrossFlats);
    levels.push(
      { z: to - top.depth, outline: shaft },
      { z: to - top.depth, outline: hexagon },
      { z: to, outline: hexagon },
    );
  } else levels.push({ z: to, outline: shaft });
  return levels;
}

/** Outlines of a hole through both faces as a feature. */
export function throughFeature(levels: readonly Level[]): Feature {
  const { first, last, walls, faces } = column(levels, 'outside');
  return { holes: { bottom: [first], top: [last] }, walls, faces };
}

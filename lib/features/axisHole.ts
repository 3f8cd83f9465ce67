import { column, type Level } from '../stack/column.js';
import { chordsOf, circlePoints, type Point, polygonPoints, reachOf } from '../stack/contour.js';
import type { Feature } from '../stack/stack.js';

/** A hole about an axis: its diameter, and what is at each of its ends. Lengths in mm. */
export interface HoleShape {
  /** None of what is no hole by itself. */
  diameter?: number;
  bottom?: HoleEnd;
  top?: HoleEnd;
}

/** A 90° countersink, a hexagonal pocket for a nut, or a round one by its diameter. */
export type HoleEnd =
  | { headDiameter: number }
  | { acrossFlats: number; depth: number }
  | { pocket: number; depth: number };

/** Shapes about one axis as one hole, of the first one's diameter; undefined where none goes through. */
export function oneHole(
  shapes: readonly HoleShape[],
): (Required<Pick<HoleShape, 'diameter'>> & HoleShape) | undefined {
  const { diameter, ...ends }: HoleShape = Object.assign({}, ...shapes.toReversed());
  return diameter === undefined ? undefined : { diameter, ...ends };
}

/**
 * Outlines of a hole about the origin, from the bed to a height. Heads narrow at 45°; a pocket that opens below ends in a
 * cone at 45° from its corners, so that neither needs support.
 */
export function holeLevels({ diameter = 0, bottom, top }: HoleShape, to: number, tolerance: number): Level[] {
  const count = chordsOf(Math.max(diameter, ...[bottom, top].map(widthOf)) / 2, tolerance);
  const round = (across: number) => circlePoints(across / 2, tolerance, [0, 0], count);
  const shaft = round(diameter);
  const inward = (end: HoleEnd | undefined, below: boolean): [depth: number, outline: Point[]][] => {
    if (!end) return [[0, shaft]];
    if ('headDiameter' in end)
      return [
        [0, round(end.headDiameter)],
        [(end.headDiameter - diameter) / 2, shaft],
      ];
    const outline = 'pocket' in end ? round(end.pocket) : polygonPoints(6, end.acrossFlats);
    const cone = below ? reachOf(outline) - diameter / 2 : 0;
    return [
      [0, outline],
      [end.depth, outline],
      [end.depth + cone, shaft],
    ];
  };
  return [
    ...inward(bottom, true).map(([depth, outline]) => ({ z: depth, outline })),
    ...inward(top, false)
      .reverse()
      .map(([depth, outline]) => ({ z: to - depth, outline })),
  ];
}

/** Width of what is round about an end, mm. */
function widthOf(end: HoleEnd | undefined): number {
  if (!end || 'acrossFlats' in end) return 0;
  return 'pocket' in end ? end.pocket : end.headDiameter;
}

/** Outlines of a hole through both faces as a feature. */
export function throughFeature(levels: readonly Level[]): Feature {
  const { first, last, walls, faces } = column(levels, 'outside');
  return { holes: { bottom: [first], top: [last] }, walls, faces };
}

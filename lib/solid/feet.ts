import { type Contour, circlePoints, contourAt } from '../stack/contour.js';
import type { Stack } from '../stack/stack.js';
import { type Blank, blankOf, type Wall } from './blank.js';

/** A foot that carries a gear down to the bed beside a plate. Lengths in mm. */
export interface Foot {
  /** How far it reaches down. */
  height: number;
  /** Outer radius under a sun, inner radius under a ring. */
  radius: number;
}

/**
 * A gear's wall with a foot: the wall is that of a gear higher by the foot, moved down by it, and the teeth end at z = 0
 * all the same.
 * @param wall as for a face width of `faceWidth` + foot
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function onFoot(wall: Wall, faceWidth: number, { height, radius }: Foot, tolerance: number): Wall {
  if (height === 0) return wall;
  const { rim, feature } = lowered(blankOf(wall, faceWidth + height, tolerance), faceWidth, height);
  const edge = circlePoints(radius, tolerance / 4);
  const upper = contourAt(edge, 0);
  const lower = contourAt(edge, -height);
  const { bottom = [], top = [] } = feature.holes;
  if (rim)
    return {
      rim: { bottom: upper, top: rim.top },
      feature: {
        holes: { top },
        walls: [...feature.walls, { from: lower, to: upper, solid: 'outside' }],
        faces: [...feature.faces, { looks: 'down', outer: rim.bottom, holes: [lower, ...bottom] }],
      },
    };
  return {
    feature: {
      holes: { bottom: [upper], top },
      walls: [...feature.walls, { from: lower, to: upper, solid: 'inside' }],
      faces: [...feature.faces, { looks: 'down', outer: lower, holes: bottom }],
    },
  };
}

/** Every contour lower by a height; what shared a contour still does. */
function lowered({ rim, feature }: Blank, faceWidth: number, height: number): Blank {
  const moved = new Map<Contour, Contour>();
  const down = (contour: Contour): Contour => {
    // Exactly where the teeth end: contours of one face must have one height.
    const z = contour.z === faceWidth + height ? faceWidth : contour.z - height;
    const known = moved.get(contour) ?? { z, points: contour.points };
    moved.set(contour, known);
    return known;
  };
  const stack: Stack = {
    walls: feature.walls.map(({ from, to, solid }) => ({ from: down(from), to: down(to), solid })),
    faces: feature.faces.map(({ looks, outer, holes }) => ({
      looks,
      outer: down(outer),
      holes: holes.map(down),
    })),
  };
  const { bottom = [], top = [] } = feature.holes;
  return {
    ...(rim && { rim: { bottom: down(rim.bottom), top: down(rim.top) } }),
    feature: { holes: { bottom: bottom.map(down), top: top.map(down) }, ...stack },
  };
}

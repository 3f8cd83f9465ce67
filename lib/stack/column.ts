import { type Contour, contourAt, type Point, reachOf } from './contour.js';
import type { Face, Wall } from './stack.js';

/** One step of a column: its outline from here on. */
export interface Level {
  z: number;
  outline: readonly Point[];
}

/** A column of outlines one above another, without its two ends. */
export interface Column {
  first: Contour;
  last: Contour;
  walls: Wall[];
  faces: Face[];
}

/**
 * A shaft or a hole about one axis: walls between outlines at different heights (upright, or cones), flat shoulders
 * between outlines at the same height.
 * @param levels in the order of their heights, lowest first; outlines at one height lie within each other
 * @param solid where the material is: `inside` for a shaft or a pin, `outside` for a hole
 * @example a hole of radius 2 that widens to 4 above z = 3, through a plate of 5 mm:
 * column([{ z: 0, outline: small }, { z: 3, outline: small }, { z: 3, outline: large }, { z: 5, outline: large }], 'outside')
 */
export function column(levels: readonly Level[], solid: Wall['solid']): Column {
  const contours = levels.map(({ z, outline }) => contourAt(outline, z));
  const walls: Wall[] = [];
  const faces: Face[] = [];
  for (let i = 1; i < contours.length; i++) {
    const from = contours[i - 1];
    const to = contours[i];
    if (from.z !== to.z) {
      walls.push({ from, to, solid });
      continue;
    }
    const grows = reachOf(to.points) > reachOf(from.points);
    const [outer, inner] = grows ? [to, from] : [from, to];
    // Where a hole grows going up it leaves a shoulder to stand on; where a shaft does, it leans out.
    faces.push({ looks: grows === (solid === 'outside') ? 'up' : 'down', outer, holes: [inner] });
  }
  return { first: contours[0], last: contours[contours.length - 1], walls, faces };
}

import type { Contour } from './contour.js';

/**
 * A body as plane faces at levels, joined by walls. Closed when every contour is used exactly twice: by two walls, by
 * a wall and a face, or by a face and a hole.
 *
 * @example A disc of radius 5, 3 mm thick:
 * const bottom = contourAt(circlePoints(5, 0.01), 0);
 * const top = atHeight(bottom, 3);
 * stackMesh({
 *   walls: [{ from: bottom, to: top, solid: 'inside' }],
 *   faces: [
 *     { looks: 'down', outer: bottom, holes: [] },
 *     { looks: 'up', outer: top, holes: [] },
 *   ],
 * });
 */
export interface Stack {
  walls: readonly Wall[];
  faces: readonly Face[];
}

/**
 * The surface between two contours at different heights. With equally many points, point i is joined to point i;
 * otherwise both must be star-shaped about one centre, and points are joined by their angle about it.
 */
export interface Wall {
  from: Contour;
  to: Contour;
  /** Where the material is: inside the contours (a shaft) or outside (a hole). */
  solid: 'inside' | 'outside';
}

/** The plane region within `outer` and without the holes, all at one height. */
export interface Face {
  /** Which way its outside looks: a face on the bed looks down. */
  looks: 'up' | 'down';
  outer: Contour;
  holes: readonly Contour[];
}

/**
 * What a feature adds to a body: contours that become holes in the body's open faces, and the surface that begins
 * there. A bore opens a hole in both end faces and brings the wall between them; a knob opens a hole in the top face
 * (where it stands) and brings a wall up and a face of its own.
 * @typeParam Open names of the faces of the body that are still open
 */
export interface Feature<Open extends string = 'bottom' | 'top'> extends Stack {
  holes: Partial<Record<Open, readonly Contour[]>>;
}

/** Several features as one; their contours must keep clear of each other (see `roomProblems`). */
export function together<Open extends string>(features: readonly Feature<Open>[]): Feature<Open> {
  const holes: Partial<Record<Open, Contour[]>> = {};
  for (const feature of features)
    for (const name of Object.keys(feature.holes) as Open[]) {
      holes[name] ??= [];
      holes[name].push(...feature.holes[name]!);
    }
  return {
    holes,
    walls: features.flatMap(({ walls }) => walls),
    faces: features.flatMap(({ faces }) => faces),
  };
}

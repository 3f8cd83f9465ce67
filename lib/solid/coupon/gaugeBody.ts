import type { Gauge } from '../../fit/coupon/layout.js';
import { type Contour, chordsOf, circlePoints, contourAt, type Point } from '../../stack/contour.js';
import type { Wall } from '../../stack/stack.js';
import type { Mesh } from '../mesh.js';
import { stackMesh } from '../stack/stackMesh.js';

/** The gauge: a flat bar with a round hole, its edges bevelled at both faces. @param tolerance of the hole, mm */
export function gaugeBody({ at, length, width, height, hole, bevel }: Gauge, tolerance: number): Mesh {
  const [x, y] = at;
  const rectangle = (inset: number): Point[] => [
    [x + inset, y + inset],
    [x + length - inset, y + inset],
    [x + length - inset, y + width - inset],
    [x + inset, y + width - inset],
  ];
  const centre: Point = [x + length / 2, y + width / 2];
  const count = chordsOf(hole / 2, tolerance);
  const circle = (inset: number) => circlePoints(hole / 2 + inset, tolerance, centre, count);
  const heights = [0, bevel, height - bevel, height];
  const column = (outline: (inset: number) => Point[]): Contour[] =>
    heights.map((z, i) => contourAt(outline(i === 0 || i === 3 ? bevel : 0), z));
  const [outer, inner] = [column(rectangle), column(circle)];
  const between = (contours: readonly Contour[], solid: Wall['solid']) =>
    contours.slice(1).map((to, i): Wall => ({ from: contours[i], to, solid }));
  return stackMesh({
    walls: [...between(outer, 'inside'), ...between(inner, 'outside')],
    faces: [
      { looks: 'down', outer: outer[0], holes: [inner[0]] },
      { looks: 'up', outer: outer[3], holes: [inner[3]] },
    ],
  });
}

import { fasteners } from '../../spec/features/fasteners.js';
import type { CrankSocket } from '../../spec/features/types.js';
import { polar } from '../../tooth/polar.js';
import type { Mesh } from '../mesh.js';
import { placed } from '../place.js';
import { column } from '../stack/column.js';
import { atHeight, chordsOf, circlePoints, contourAt, type Point, polygonPoints } from '../stack/contour.js';
import { stackMesh } from '../stack/stackMesh.js';
import { BESIDE } from './clampRing.js';

/** Thickness of the arm, material around peg and hole, and how far the peg ends above the pit's floor, mm. */
const THICK = 5;
const AROUND = 3;
const SHORT = 0.5;
/** Screw that serves as the axle of a grip. */
const AXLE = fasteners.M5.medium;

/**
 * A crank handle printed beside the set: an arm with a peg for the gear's pit at one end and a clearance hole for an
 * M5 screw, the axle of a grip, at the other. It is turned over for use.
 * @param length axis to axis, mm
 * @param setRadius outer radius of the set, mm
 */
export function crankHandle(crank: CrankSocket, length: number, setRadius: number, tolerance: number): Mesh {
  const peg = polygonPoints(crank.shape === 'square' ? 4 : 6, crank.acrossFlats);
  const radius = Math.max(Math.hypot(...peg[0]), AXLE / 2) + AROUND;
  const bottom = contourAt(stadium(length, radius, tolerance), 0);
  const top = atHeight(bottom, THICK);
  const hole = column(
    [0, THICK].map((z) => ({ z, outline: circlePoints(AXLE / 2, tolerance, [length, 0]) })),
    'outside',
  );
  const standing = column(
    [THICK, THICK + crank.depth - SHORT].map((z) => ({ z, outline: peg })),
    'inside',
  );
  const mesh = stackMesh({
    walls: [{ from: bottom, to: top, solid: 'inside' }, ...hole.walls, ...standing.walls],
    faces: [
      { looks: 'down', outer: bottom, holes: [hole.first] },
      { looks: 'up', outer: top, holes: [hole.last, standing.first] },
      { looks: 'up', outer: standing.last, holes: [] },
    ],
  });
  return placed(mesh, 0, [-length / 2, -(setRadius + BESIDE + radius)]);
}

/** Two half circles and the straights between them, from the axis to (length, 0). */
function stadium(length: number, radius: number, tolerance: number): Point[] {
  const steps = chordsOf(radius, tolerance) / 2;
  const half = (from: number, x: number) =>
    Array.from({ length: steps + 1 }, (_, i): Point => {
      const [dx, dy] = polar(radius, from + (Math.PI * i) / steps);
      return [x + dx, dy];
    });
  return [...half(-Math.PI / 2, length), ...half(Math.PI / 2, 0)];
}

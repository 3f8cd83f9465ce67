import { armRadius, type CrankSocket, sidesOf } from '../../features/crank.js';
import { AXLE } from '../../features/fasteners.js';
import type { HandleSeat } from '../../fit/handleSeat.js';
import { column } from '../../stack/column.js';
import {
  atHeight,
  chordsOf,
  circlePoints,
  contourAt,
  type Point,
  polygonPoints,
} from '../../stack/contour.js';
import { polar } from '../../tooth/polar.js';
import type { InUse } from '../inUse.js';
import type { Mesh } from '../mesh.js';
import { placed } from '../place.js';
import { stackMesh } from '../stack/stackMesh.js';
import { BESIDE } from './clampRing.js';

/** Thickness of the arm, and how far the peg ends above the pit's floor, mm. */
const THICK = 5;
const SHORT = 0.5;
/** What a shoulder is wider than its peg at least, however narrow the gear, mm. */
const LEAST_LEDGE = 0.05;
/** Face left between the shoulder and the axle's hole, mm: they must not touch. */
const BESIDE_AXLE = 0.2;

/**
 * A crank handle printed beside the set: an arm with a peg for the gear's pit at one end and a clearance hole for an
 * M5 screw, the axle of a grip, at the other. It is turned over for use (`seatedHandle`); then it stands on a round
 * shoulder about the peg, so that its arm turns clear of all that does not turn with the gear.
 * @param length axis to axis, mm
 * @param setRadius outer radius of the set, mm
 */
export function crankHandle(
  crank: CrankSocket,
  length: number,
  seat: Pick<HandleSeat, 'standOff' | 'radius'>,
  setRadius: number,
  tolerance: number,
): Mesh {
  const peg = polygonPoints(sidesOf(crank), crank.acrossFlats);
  const radius = armRadius(crank);
  const bottom = contourAt(stadium(length, radius, tolerance), 0);
  const top = atHeight(bottom, THICK);
  const hole = column(
    [0, THICK].map((z) => ({ z, outline: circlePoints(AXLE / 2, tolerance, [length, 0]) })),
    'outside',
  );
  const narrowest = Math.hypot(...peg[0]) + LEAST_LEDGE;
  const shoulder = circlePoints(
    Math.max(narrowest, Math.min(seat.radius, radius - LEAST_LEDGE, length - AXLE / 2 - BESIDE_AXLE)),
    tolerance,
  );
  const onFace = THICK + seat.standOff;
  const standing = column(
    [
      { z: THICK, outline: shoulder },
      { z: onFace, outline: shoulder },
      { z: onFace, outline: peg },
      { z: onFace + crank.depth - SHORT, outline: peg },
    ],
    'inside',
  );
  const mesh = stackMesh({
    walls: [{ from: bottom, to: top, solid: 'inside' }, ...hole.walls, ...standing.walls],
    faces: [
      ...standing.faces,
      { looks: 'down', outer: bottom, holes: [hole.first] },
      { looks: 'up', outer: top, holes: [hole.last, standing.first] },
      { looks: 'up', outer: standing.last, holes: [] },
    ],
  });
  return placed(mesh, 0, handlePlace(crank, length, setRadius));
}

/** How the handle gets from where it is printed onto its gear: turned over, its shoulder on the gear's end face. */
export function handleInUse(
  crank: CrankSocket,
  length: number,
  { centre, face, standOff }: HandleSeat,
  setRadius: number,
): InUse {
  const [x, y] = handlePlace(crank, length, setRadius);
  return {
    motion: [centre[0] - x, centre[1] - y, face + standOff + THICK, Math.PI, 0, 0],
    about: [x, y, 0],
  };
}

/** Where the axis of the peg is as the handle lies on the bed. */
function handlePlace(crank: CrankSocket, length: number, setRadius: number): [number, number] {
  return [-length / 2, -(setRadius + BESIDE + armRadius(crank))];
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

import type { PlacedBar } from '../fit/train/fitTrain.js';
import { type BarSweep, leanAt } from '../solid/bar/barSweep.js';
import type { Mesh } from '../solid/mesh.js';
import { halfThicknessAt } from '../tooth/bar.js';
import {
  deviationFrom,
  isFace,
  ON_SURFACE,
  type SurfaceDeviation,
  type ToothedSide,
} from './surfaceDeviation.js';

/** Rounding of doubles, mm. */
const ON_WALL = 1e-9;

/**
 * Measures a bar against its exact flanks, lands, root roundings and bevels, as `surfaceDeviation` does a gear. End
 * faces, foot and square ends are left out.
 * @param mesh in its place, as `barBody` makes it
 * @param changed as for a gear
 */
export function barDeviation(
  mesh: Mesh,
  bar: PlacedBar,
  sweep: BarSweep,
  changed?: { swept: Mesh; tolerance: number },
): SurfaceDeviation {
  const p = mesh.positions;
  const root = bar.datum + bar.profile.root;
  const atEnd = (at: number) => bar.ends.some((end) => Math.abs(p[at] - end) < ON_WALL);
  const below = (at: number) => p[at + 1] < root - ON_WALL;
  // Every wall without teeth reaches below the roots, or stands in a square end.
  const leftOut = (a: number, b: number, c: number) =>
    isFace(p, a, b, c, sweep) || [a, b, c].some(below) || [a, b, c].every(atEnd);
  return deviationFrom(mesh, barSide(bar, sweep), leftOut, ON_SURFACE, changed);
}

/** Distance from one exact surface of a bar, mm. */
type SurfaceDistance = (x: number, v: number, z: number) => number;

/**
 * Distances from the exact surfaces, for a point whose x is counted from the middle of its tooth at z = 0, whose y is
 * its height above the datum line, and whose z is counted from the nearer end face. A way along the bar is cos β times
 * as far square to a slanted tooth.
 */
function barSurfaces({ profile }: PlacedBar, { bevelSize, bevelAngle }: BarSweep): SurfaceDistance[] {
  const { tip, root, round, helixAngle, normalPressureAngle } = profile;
  const across = (x: number) => Math.abs(x) * Math.cos(helixAngle);
  const cosNormal = Math.cos(normalPressureAngle);
  const surfaces: SurfaceDistance[] = [
    (_, v) => Math.abs(v - root),
    (_, v) => Math.abs(v - tip),
    (x, v) => Math.abs(across(x) - halfThicknessAt(profile, v)) * cosNormal,
    (x, v) => Math.abs(Math.hypot(across(x) - round.u, v - round.v) - round.radius),
  ];
  if (bevelSize > 0)
    surfaces.push(
      (_, v, z) => Math.abs(v - (tip - bevelSize) - z / Math.tan(bevelAngle)) * Math.sin(bevelAngle),
    );
  return surfaces;
}

function barSide(bar: PlacedBar, sweep: BarSweep): ToothedSide<PlacedBar, SurfaceDistance> {
  return {
    body: bar,
    surfaces: barSurfaces(bar, sweep),
    distance: (surface, [x, v, z]) => surface(x, v, z),
    toothOf: ({ profile, firstTooth }, p, a, b, c) => {
      const z = (p[a + 2] + p[b + 2] + p[c + 2]) / 3;
      const x = (p[a] + p[b] + p[c]) / 3 - leanAt(sweep, z);
      const pitch = profile.transversePitch;
      return firstTooth + Math.round((x - firstTooth) / pitch) * pitch;
    },
    carry: ({ datum }, tooth, point) => {
      const z = point[2];
      point[0] -= leanAt(sweep, z) + tooth;
      point[1] -= datum;
      point[2] = Math.min(z, sweep.faceWidth - z);
    },
  };
}

import type { CouponLayout } from '../../fit/coupon/layout.js';
import type { Station } from '../../fit/coupon/stations.js';
import { barSweep } from '../../solid/bar/barSweep.js';
import type { Mesh } from '../../solid/mesh.js';
import { placed } from '../../solid/place.js';
import { barDeviation } from '../barDeviation.js';
import type { SurfaceDeviation } from '../surfaceDeviation.js';

/** Rounding of doubles, mm. */
const ABOVE = 1e-6;

/**
 * The toothed walls of a frame against their exact surfaces, all slots together, each measured as a bar is.
 * @param slots triangles of the frame that are the walls of each slot
 */
export function frameDeviation(
  frame: Mesh,
  stations: readonly Station[],
  layout: CouponLayout,
  slots: readonly (readonly [number, number])[],
): SurfaceDeviation {
  const each = stations.map(({ drawn: { spec, bar } }, i) => {
    const [x, y] = layout.axes[i];
    const walls = { ...frame, triangles: frame.triangles.slice(3 * slots[i][0], 3 * slots[i][1]) };
    const own = { ...bar!, ends: layout.slots[i].ends };
    return barDeviation(
      toothedSide(placed(walls, 0, [-x, -y]), bar!.datum + bar!.tip),
      own,
      barSweep(spec, bar!),
    );
  });
  return each.reduce((a, b) => ({
    ...(b.worst > a.worst ? b : a),
    measured: a.measured + b.measured,
    astray: a.astray + b.astray,
    area: a.area + b.area,
  }));
}

/** The triangles that reach nowhere above the tips: smooth wall and ends do. */
function toothedSide({ positions, triangles }: Mesh, tips: number): Mesh {
  const kept: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (corners.every((corner) => positions[3 * corner + 1] <= tips + ABOVE)) kept.push(...corners);
  }
  return { positions, triangles: Uint32Array.from(kept) };
}

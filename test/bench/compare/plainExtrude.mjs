// What a plain twisted extrude needs for the same deviation: outline points carried up level by level, every quad split
// along the same diagonal. Its deviation is measured on the exact surfaces, and the coarsest one that keeps within it is
// looked for over outline and levels.

import { distanceFrom } from '../../../dist/lib/solid/sweep/exactSurface.js';
import { twistRate } from '../../../dist/lib/solid/sweep/helix.js';
import { SAMPLES } from '../../../dist/lib/solid/sweep/samples.js';
import { toothedSurfaces } from '../../../dist/lib/solid/sweep/surfaces.js';
import { gearOutline } from '../../../dist/lib/tooth/outline.js';

/**
 * @param allowed largest deviation, mm
 * @returns sagitta of the outline, its number of points, levels a half, triangles of the whole toothed side
 */
export function coarsestExtrude(profile, sweep, allowed) {
  const half = sweep.faceWidth / 2;
  const twist = twistRate(profile, sweep) * half;
  let best = null;
  for (let sagitta = allowed; sagitta > allowed / 40; sagitta /= 1.25) {
    const { points, segments } = gearOutline(profile, sagitta);
    const count = segments.length / profile.gear.teeth;
    let [low, high] = [1, 1024];
    if (deviation(profile, points, count, twist / high, half / high) > allowed) continue;
    while (low < high) {
      const levels = (low + high) >> 1;
      if (deviation(profile, points, count, twist / levels, half / levels) <= allowed) high = levels;
      else low = levels + 1;
    }
    const triangles = 2 * 2 * low * count * profile.gear.teeth;
    if (!best || triangles < best.triangles)
      best = { sagitta, points: count * profile.gear.teeth, levels: low, triangles };
  }
  return best;
}

/** Largest distance of one level's quads from the exact surfaces, over one tooth. */
function deviation(profile, points, count, turn, height) {
  const surfaces = toothedSurfaces(profile, {
    bevelSize: 0,
    bevelAngle: 1,
    form: 'herringbone',
    faceWidth: 1,
  });
  const perTurn = turn / height;
  const corner = (i, level) => {
    const [x, y] = [points[2 * i], points[2 * i + 1]];
    const angle = level * turn;
    return [
      x * Math.cos(angle) - y * Math.sin(angle),
      x * Math.sin(angle) + y * Math.cos(angle),
      level * height,
    ];
  };
  const pitch = (2 * Math.PI) / profile.gear.teeth;
  let worst = 0;
  const total = points.length / 2;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % total;
    const quad = [corner(i, 0), corner(j, 0), corner(j, 1), corner(i, 1)];
    for (const [a, b, c] of [
      [quad[0], quad[1], quad[2]],
      [quad[0], quad[2], quad[3]],
    ]) {
      const off = surfaces.map(() => 0);
      for (const [u, v, w] of SAMPLES) {
        const [x, y, z] = [0, 1, 2].map((k) => u * a[k] + v * b[k] + w * c[k]);
        const angle = Math.atan2(y, x) - perTurn * z;
        const within = angle - Math.round(angle / pitch) * pitch;
        const point = Float64Array.of(Math.hypot(x, y), within, z);
        surfaces.forEach((surface, k) => {
          off[k] = Math.max(off[k], distanceFrom(surface, point));
        });
      }
      worst = Math.max(worst, Math.min(...off));
    }
  }
  return worst;
}

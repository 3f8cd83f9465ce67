import type { Motion } from './contact.js';

/** x, y, z, mm. */
export type Vector = readonly [number, number, number];

/** How far a point moves with its part, mm. @param arm from the part's centre to the point */
export function moved(motion: Motion, [x, y, z]: Vector): [number, number, number] {
  return [
    motion[0] + motion[4] * z - motion[5] * y,
    motion[1] + motion[5] * x - motion[3] * z,
    motion[2] + motion[3] * y - motion[4] * x,
  ];
}

/** How much a point moves along a direction for each number of its part's motion. @param arm as for `moved` */
export function slopesAlong([nx, ny, nz]: Vector, [x, y, z]: Vector): Motion {
  return [nx, ny, nz, y * nz - z * ny, z * nx - x * nz, x * ny - y * nx];
}

/** The same along the opposite direction. */
export function opposite(slopes: Motion): Motion {
  return slopes.map((slope) => -slope) as unknown as Motion;
}

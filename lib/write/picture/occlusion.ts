import type { Surface } from './shade.js';

/** Directions that are looked in, and how far, in shares of the reach. */
const DIRECTIONS = 8;
const STEPS = [0.2, 0.55, 1];
/** Surfaces that rise less steeply than this hide nothing (facets of a round wall do not shade each other). */
const FLAT = 0.12;
/** What one surface standing at right angles along one side takes away, about. */
const STRENGTH = 1.9;

/**
 * How much of the light from all around is kept off a surface by what stands near it: 0 in the open, up to 1 in a
 * crevice; one value for every square of `stride` by `stride` pixels, row by row. Looks at depths alone, so its cost
 * does not grow with the mesh. (The usual screen-space ambient occlusion: common practice, no source.)
 * @param reach how far neighbours count, pixels
 * @param scale pixels for each mm
 */
export function occlusion(surface: Surface, stride: number, reach: number, scale: number): Float32Array {
  const { width, height, normals, depth } = surface;
  const hidden = new Float32Array((width / stride) * (height / stride));
  const offsets = offsetsWithin(reach);
  const far = (2.5 * reach) / scale;
  let next = 0;
  for (let y = 0; y < height; y += stride)
    for (let x = 0; x < width; x += stride, next++) {
      const at = y * width + x;
      const nx = normals[3 * at];
      const ny = normals[3 * at + 1];
      const nt = normals[3 * at + 2];
      let sum = 0;
      for (let i = 0; i < offsets.length; i += 2) {
        const px = x + offsets[i];
        const py = y + offsets[i + 1];
        if (px < 0 || py < 0 || px >= width || py >= height) continue;
        const right = offsets[i] / scale;
        const up = -offsets[i + 1] / scale;
        const toward = depth[py * width + px] - depth[at];
        const rise = right * nx + up * ny + toward * nt;
        if (rise <= 0) continue;
        const distance = Math.sqrt(right * right + up * up + toward * toward);
        if (rise > FLAT * distance && distance < far) sum += (rise / distance - FLAT) * (1 - distance / far);
      }
      hidden[next] = Math.min(1, (2 * STRENGTH * sum) / offsets.length);
    }
  return hidden;
}

/** x and y of the neighbours that are looked at, in turn, whole pixels. */
function offsetsWithin(reach: number): Int32Array {
  const offsets = STEPS.flatMap((step) =>
    Array.from({ length: DIRECTIONS }, (_, i) => {
      const turn = (2 * Math.PI * (i + 1.5 * step)) / DIRECTIONS;
      return [Math.round(step * reach * Math.cos(turn)), Math.round(step * reach * Math.sin(turn))];
    }),
  );
  return Int32Array.from(offsets.flat());
}

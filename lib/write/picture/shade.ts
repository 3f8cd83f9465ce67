import type { Camera } from './camera.js';
import type { Facets } from './facets.js';
import type { CuttingPlane, Seen } from './raster.js';

type Vector = readonly [number, number, number];

/** A point of the surface under each pixel: its unit normal, and its distance toward the eye. */
export interface Surface {
  width: number;
  height: number;
  /** Normal of pixel i at 3i, in the eye's frame: right, up, toward. */
  normals: Float32Array;
  depth: Float32Array;
  /** Index of the part; -1 for the bed, around and beneath the parts. */
  part: Int16Array;
  /** 1 where the pixel looks at a face that a section has cut. */
  cut: Uint8Array;
}

/** Normals and depths for every pixel; where no part is, those of the bed z = 0, on which shadows fall. */
export function surfaceSeen(
  { width, height, facet, depth, cut }: Seen,
  facets: Facets,
  camera: Camera,
  plane?: CuttingPlane,
): Surface {
  const { right, up, toward } = camera;
  const surface: Surface = {
    width,
    height,
    depth,
    normals: new Float32Array(3 * width * height),
    part: new Int16Array(width * height).fill(-1),
    cut: cut ?? new Uint8Array(width * height),
  };
  for (let i = 0; i < facet.length; i++) {
    const seen = facet[i];
    let x = 0;
    let y = 0;
    let z = 1;
    if (seen >= 0 && surface.cut[i] && plane) [x, y, z] = plane.normal;
    else if (seen >= 0) {
      x = facets.normals[3 * seen];
      y = facets.normals[3 * seen + 1];
      z = facets.normals[3 * seen + 2];
    }
    surface.normals[3 * i] = x * right[0] + y * right[1];
    surface.normals[3 * i + 1] = x * up[0] + y * up[1] + z * up[2];
    surface.normals[3 * i + 2] = x * toward[0] + y * toward[1] + z * toward[2];
    if (seen >= 0) surface.part[i] = facets.part[seen];
    // z = 0 where y up + d toward has no height.
    else depth[i] = ((Math.floor(i / width) + 0.5 - camera.y) * up[2]) / camera.scale / toward[2];
  }
  return surface;
}

/** From where the light comes in the eye's frame: over the left shoulder. Unit length. */
const LIGHT: Vector = [-0.43, 0.58, 0.69];
/** How bright a face is that looks away from the light, and how much a face toward it gains. */
const AMBIENT = 0.62;
const DIFFUSE = 0.46;

/** Brightness of a pixel from the direction of its surface alone, 0.62 to 1.08. */
export function lightOn({ normals }: Surface, pixel: number): number {
  const i = 3 * pixel;
  const toLight = normals[i] * LIGHT[0] + normals[i + 1] * LIGHT[1] + normals[i + 2] * LIGHT[2];
  return AMBIENT + DIFFUSE * Math.max(0, toLight);
}

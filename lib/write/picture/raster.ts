import type { Part } from '../../solid/mesh.js';
import type { Camera } from './camera.js';
import type { Facets } from './facets.js';

/** What each pixel shows. */
export interface Seen {
  width: number;
  height: number;
  /** Facet nearest to the eye; -1 for none. */
  facet: Int32Array;
  /** Its distance toward the eye from the plane through the origin, mm. */
  depth: Float32Array;
  /** Present where a section was cut: 1 where the pixel looks at the cut face. */
  cut?: Uint8Array;
}

/** Points p with p·normal > offset are taken away. */
export interface CuttingPlane {
  /** Unit length. */
  normal: readonly [number, number, number];
  /** mm. */
  offset: number;
}

/**
 * The nearest facet at the middle of every pixel. Two facets that share an edge share its pixels without gap or
 * overlap, because an edge is walked from its lower end in both. A cut body is hollow to the eye: where the nearest
 * facet left is seen from inside, the pixel looks at the cut face.
 */
export function rasterise(
  parts: readonly Part[],
  { normals }: Facets,
  camera: Camera,
  size: { width: number; height: number },
  plane?: CuttingPlane,
): Seen {
  const { width, height } = size;
  const facet = new Int32Array(width * height).fill(-1);
  const depth = new Float32Array(width * height).fill(Number.NEGATIVE_INFINITY);
  const [tx, ty, tz] = camera.toward;
  const beyond = plane && planeOnScreen(plane, camera);
  const inside = plane && new Uint8Array(width * height);
  let at = 0;
  for (const { mesh } of parts) {
    const points = projected(mesh.positions, camera);
    const { triangles } = mesh;
    for (let i = 0; i < triangles.length; i += 3, at++) {
      const facing = normals[3 * at] * tx + normals[3 * at + 1] * ty + normals[3 * at + 2] * tz;
      if (facing <= 0 && !plane) continue;
      // Ends of edges in order of height; equal heights leave nothing to walk.
      let [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
      if (points[b + 1] < points[a + 1]) [a, b] = [b, a];
      if (points[c + 1] < points[a + 1]) [a, c] = [c, a];
      if (points[c + 1] < points[b + 1]) [b, c] = [c, b];
      const [ax, ay, ad] = [points[a], points[a + 1], points[a + 2]];
      const [bx, by, bd] = [points[b], points[b + 1], points[b + 2]];
      const [cx, cy, cd] = [points[c], points[c + 1], points[c + 2]];
      const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
      if (area === 0) continue;
      const slopeX = ((bd - ad) * (cy - ay) - (cd - ad) * (by - ay)) / area;
      const slopeY = ((cd - ad) * (bx - ax) - (bd - ad) * (cx - ax)) / area;
      const first = Math.max(0, Math.ceil(ay - 0.5));
      const last = Math.min(height - 1, Math.ceil(cy - 0.5) - 1);
      for (let row = first; row <= last; row++) {
        const y = row + 0.5;
        const long = ax + ((y - ay) / (cy - ay)) * (cx - ax);
        const short =
          y < by ? ax + ((y - ay) / (by - ay)) * (bx - ax) : bx + ((y - by) / (cy - by)) * (cx - bx);
        const from = Math.max(0, Math.ceil(Math.min(long, short) - 0.5));
        const to = Math.min(width - 1, Math.ceil(Math.max(long, short) - 0.5) - 1);
        let d = ad + slopeY * (y - ay) + slopeX * (from + 0.5 - ax);
        for (let pixel = row * width + from, x = from; x <= to; x++, pixel++, d += slopeX) {
          if (d <= depth[pixel]) continue;
          if (beyond && beyond(x + 0.5, y, d) > 0) continue;
          depth[pixel] = d;
          facet[pixel] = at;
          if (inside) inside[pixel] = facing < 0 ? 1 : 0;
        }
      }
    }
  }
  if (plane && inside) moveToPlane(depth, inside, width, planeDepth(plane, camera));
  return { width, height, facet, depth, ...(inside ? { cut: inside } : {}) };
}

/** x and y in pixels and depth in mm of every vertex. */
function projected(positions: Float64Array, { right, up, toward, scale, x, y }: Camera): Float64Array {
  const points = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const [px, py, pz] = [positions[i], positions[i + 1], positions[i + 2]];
    points[i] = x + scale * (px * right[0] + py * right[1] + pz * right[2]);
    points[i + 1] = y - scale * (px * up[0] + py * up[1] + pz * up[2]);
    points[i + 2] = px * toward[0] + py * toward[1] + pz * toward[2];
  }
  return points;
}

const dot = (a: readonly number[], b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Distance of a pixel's point above the plane, mm. */
function planeOnScreen({ normal, offset }: CuttingPlane, camera: Camera) {
  const { right, up, toward, scale } = camera;
  const [nx, ny, nt] = [dot(normal, right) / scale, dot(normal, up) / scale, dot(normal, toward)];
  return (x: number, y: number, d: number): number =>
    nx * (x - camera.x) - ny * (y - camera.y) + nt * d - offset;
}

/** Depth of the plane behind a pixel, mm. */
function planeDepth(plane: CuttingPlane, camera: Camera) {
  const above = planeOnScreen(plane, camera);
  const rate = dot(plane.normal, camera.toward);
  return (x: number, y: number): number => -above(x, y, 0) / rate;
}

function moveToPlane(
  depth: Float32Array,
  inside: Uint8Array,
  width: number,
  at: (x: number, y: number) => number,
): void {
  for (let i = 0; i < depth.length; i++)
    if (inside[i]) depth[i] = at((i % width) + 0.5, Math.floor(i / width) + 0.5);
}

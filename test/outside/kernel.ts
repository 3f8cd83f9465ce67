import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../../lib/solid/mesh.js';

/** The reference kernel, started once a test file. */
export async function startKernel(): Promise<ManifoldToplevel> {
  const kernel = await Module();
  kernel.setup();
  return kernel;
}

/** One of our meshes as a body of the reference kernel, which reads 32-bit coordinates. */
export function kernelBody(kernel: ManifoldToplevel, { positions, triangles }: Mesh): Manifold {
  return new kernel.Manifold(
    new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles }),
  );
}

/** One outline of a section: its area (negative for a hole), centre of area, and least and largest distance from there. */
export interface MeasuredLoop {
  area: number;
  centre: [number, number];
  least: number;
  most: number;
}

/** The outlines in which the reference kernel cuts one of our meshes at a height, largest areas first. */
export function loopsAt(kernel: ManifoldToplevel, mesh: Mesh, height: number): MeasuredLoop[] {
  const body = kernelBody(kernel, mesh);
  const section = body.slice(height);
  const loops = section.toPolygons().map(measured);
  section.delete();
  body.delete();
  return loops.sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
}

function measured(points: [number, number][]): MeasuredLoop {
  let [area, x, y] = [0, 0, 0];
  points.forEach(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length];
    const cross = (ax * by - bx * ay) / 2;
    area += cross;
    x += (cross * (ax + bx)) / 3;
    y += (cross * (ay + by)) / 3;
  });
  const centre: [number, number] = [x / area, y / area];
  const away = points.map(([px, py]) => Math.hypot(px - centre[0], py - centre[1]));
  return { area, centre, least: Math.min(...away), most: Math.max(...away) };
}

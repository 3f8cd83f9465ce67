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

import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../mesh.js';

/**
 * A mesh as a body of the kernel, to the last bit. The kernel takes in 32-bit coordinates but works with 64: so the
 * body is made from rounded corners, each moved to its exact place afterwards. Every triangle counts as a face of its
 * own, which keeps the kernel from merging those that lie in one plane.
 * @returns null when the kernel does not find the mesh closed and 2-manifold
 */
export function exactBody(kernel: ManifoldToplevel, { positions, triangles }: Mesh): Manifold | null {
  const { rounded, vertexAt } = apart(positions);
  const rough = new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: rounded,
      triVerts: triangles,
      faceID: Uint32Array.from({ length: triangles.length / 3 }, (_, triangle) => triangle),
    }),
  );
  if (rough.status() !== 'NoError' || rough.isEmpty()) {
    rough.delete();
    return null;
  }
  const body = rough.warp((place) => {
    const vertex = vertexAt.get(place.join());
    if (vertex === undefined) throw new Error('the kernel moved a vertex that it was given');
    for (let axis = 0; axis < 3; axis++) place[axis] = positions[3 * vertex + axis];
  });
  rough.delete();
  return body;
}

/** Corners rounded to 32 bits, those that would coincide a last bit apart, and which vertex each one is. */
function apart(positions: Float64Array): { rounded: Float32Array; vertexAt: Map<string, number> } {
  const rounded = Float32Array.from(positions);
  const vertexAt = new Map<string, number>();
  for (let vertex = 0; 3 * vertex < positions.length; vertex++) {
    const place = rounded.subarray(3 * vertex, 3 * vertex + 3);
    while (vertexAt.has(place.join())) place[0] += Math.max(Math.abs(place[0]) * 2 ** -23, 2 ** -126);
    vertexAt.set(place.join(), vertex);
  }
  return { rounded, vertexAt };
}

/**
 * A body of the kernel as a mesh, its corners with all their 64 bits. The body stays as it is.
 * @throws Error when the kernel lists its corners in different orders
 */
export function exactMesh(body: Manifold): Mesh {
  const { vertProperties, triVerts } = body.getMesh();
  const positions = new Float64Array(vertProperties.length);
  let at = 0;
  const copy = body.warp((place) => {
    positions.set(place, at);
    at += 3;
  });
  copy.numVert(); // the kernel works only when it is asked for a result
  copy.delete();
  if (at !== positions.length || positions.some((value, i) => Math.fround(value) !== vertProperties[i]))
    throw new Error('the kernel gives exact and rounded vertices in different orders');
  return { positions, triangles: Uint32Array.from(triVerts) };
}

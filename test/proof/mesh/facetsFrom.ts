import { type Facets, facetsOf } from '../../../lib/proof/mesh/facets.js';
import type { Point } from './fixtures.js';

/** Facets of plain corner lists, three points a triangle. */
export function facetsFrom(...triangles: readonly (readonly Point[])[]): Facets {
  const positions = Float64Array.from(triangles.flat(2));
  const indices = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  return facetsOf(
    { positions, triangles: indices },
    Uint32Array.from({ length: triangles.length }, (_, i) => i),
  );
}

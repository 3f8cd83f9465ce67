import earcut from 'earcut';

/**
 * Triangles over a plane region, counter-clockwise seen from +z, on the vertices given and no others.
 * @param loops the outer boundary first, then holes; each an ordered list of vertex ids
 * @param positions x, y, z of vertex i at 3i, mm
 * @returns vertex ids, three a triangle
 */
export function fillPlane(loops: readonly (readonly number[])[], positions: ArrayLike<number>): number[] {
  const ids = loops.flat();
  const flat: number[] = [];
  for (const id of ids) flat.push(positions[3 * id], positions[3 * id + 1]);
  const holes: number[] = [];
  let count = 0;
  for (const loop of loops.slice(0, -1)) {
    count += loop.length;
    holes.push(count);
  }
  const triangles = earcut(flat, holes).map((i) => ids[i]);
  return counterClockwise(triangles, positions) ? triangles : reversed(triangles);
}

/** The library keeps one winding for all its triangles; which one is seen from the sum of their areas. */
function counterClockwise(triangles: readonly number[], positions: ArrayLike<number>): boolean {
  let twiceArea = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    twiceArea +=
      (positions[b] - positions[a]) * (positions[c + 1] - positions[a + 1]) -
      (positions[b + 1] - positions[a + 1]) * (positions[c] - positions[a]);
  }
  return twiceArea > 0;
}

/** The same triangles seen from the other side. */
export function reversed(triangles: readonly number[]): number[] {
  const turned: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) turned.push(triangles[i], triangles[i + 2], triangles[i + 1]);
  return turned;
}

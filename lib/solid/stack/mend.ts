import { loopArea } from './loopArea.js';

/**
 * Triangles of a plane region made to fit edge to edge: where a vertex lies on the edge of a triangle that does not
 * use it, that triangle is divided there. earcut leaves such places where points are exactly in line.
 * @param loops vertex ids of the region's boundaries
 * @param triangles vertex ids, counter-clockwise seen from +z
 * @param positions x, y, z of vertex i at 3i
 */
export function mended(
  triangles: readonly number[],
  loops: readonly (readonly number[])[],
  positions: ArrayLike<number>,
): number[] {
  const ids = triangles.slice();
  const vertices = loops.flat();
  const count = positions.length / 3;
  const paired = new Set<number>();
  const key = (a: number, b: number) => a * count + b;
  const note = (t: number) => {
    for (let k = 0; k < 3; k++) paired.add(key(ids[t + k], ids[t + ((k + 1) % 3)]));
  };
  for (let t = 0; t < ids.length; t += 3) note(t);
  loops.forEach((loop, i) => {
    // Beyond the edges of the region there is no triangle: there each edge is taken as having its other side.
    const counterClockwise = loopArea(loop, positions) > 0;
    loop.forEach((a, k) => {
      const b = loop[(k + 1) % loop.length];
      paired.add(counterClockwise === (i === 0) ? key(b, a) : key(a, b));
    });
  });
  // By Euler's formula no filling has more triangles: one that grows beyond them is wrong, and would grow for ever.
  const most = 3 * (vertices.length + 2 * loops.length);
  for (let t = 0; t < ids.length && ids.length <= most; t += 3) {
    for (let k = 0; k < 3; k++) {
      const a = ids[t + k];
      const b = ids[t + ((k + 1) % 3)];
      const c = ids[t + ((k + 2) % 3)];
      if (paired.has(key(b, a))) continue;
      const between = vertices.find((v) => v !== a && v !== b && v !== c && liesBetween(v, a, b, positions));
      if (between === undefined) continue;
      // One half in place, looked at again from its first edge; the other at the end of the list.
      [ids[t], ids[t + 1], ids[t + 2]] = [a, between, c];
      ids.push(between, b, c);
      note(t);
      note(ids.length - 3);
      k = ids.length <= most ? -1 : 3;
    }
  }
  return ids;
}

/** How far off a line its points may be by rounding, as a share of its length. */
const IN_LINE = 1e-10;

function liesBetween(v: number, a: number, b: number, p: ArrayLike<number>): boolean {
  const ux = p[3 * b] - p[3 * a];
  const uy = p[3 * b + 1] - p[3 * a + 1];
  const wx = p[3 * v] - p[3 * a];
  const wy = p[3 * v + 1] - p[3 * a + 1];
  const square = ux * ux + uy * uy;
  const along = ux * wx + uy * wy;
  return along > 0 && along < square && Math.abs(ux * wy - uy * wx) <= IN_LINE * square;
}

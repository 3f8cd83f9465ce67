import { weld } from '../geom3/weld.js';
import type { Mesh } from '../mesh.js';

/**
 * What a boolean made of a body, written down in one way only: first what is left of the body as it was, its vertices
 * and whole triangles in their old order; then new vertices by their coordinates, and all other triangles by their
 * vertices. So the same input gives the same bytes, in whatever order a kernel works.
 */
export function inOrder(body: Mesh, made: Mesh): Mesh {
  const old = body.positions.length / 3;
  const all = new Float64Array(body.positions.length + made.positions.length);
  all.set(body.positions);
  all.set(made.positions, body.positions.length);
  const { positions: places, indexOf } = weld(all, 0);
  const corners = Array.from(made.triangles, (vertex) => indexOf[old + vertex]);

  const used = [...new Set(corners)];
  const byPlace = (a: number, b: number) =>
    places[3 * a] - places[3 * b] ||
    places[3 * a + 1] - places[3 * b + 1] ||
    places[3 * a + 2] - places[3 * b + 2];
  const kept = used.filter((vertex) => vertex < old).sort((a, b) => a - b);
  const added = used.filter((vertex) => vertex >= old).sort(byPlace);
  const order = new Map([...kept, ...added].map((vertex, place) => [vertex, place]));
  const positions = new Float64Array(3 * order.size);
  for (const [vertex, place] of order) positions.set(places.subarray(3 * vertex, 3 * vertex + 3), 3 * place);

  const whole = new Map<string, number>();
  for (let t = 0; t < body.triangles.length; t += 3) whole.set(keyOf(body.triangles, t), t);
  const untouched: number[] = [];
  const others: [number, number, number][] = [];
  for (let t = 0; t < corners.length; t += 3) {
    const before = whole.get(keyOf(corners, t));
    if (before !== undefined) untouched.push(before);
    else others.push(lowestFirst(corners.slice(t, t + 3).map((vertex) => order.get(vertex)!)));
  }
  untouched.sort((a, b) => a - b);
  others.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
  const triangles = [
    ...untouched.flatMap((t) => Array.from(body.triangles.subarray(t, t + 3), (v) => order.get(v)!)),
    ...others.flat(),
  ];
  return { positions, triangles: Uint32Array.from(triangles) };
}

function keyOf(triangles: ArrayLike<number>, t: number): string {
  return lowestFirst([triangles[t], triangles[t + 1], triangles[t + 2]]).join();
}

/** A triangle's corners turned so that the lowest comes first. */
function lowestFirst([a, b, c]: readonly number[]): [number, number, number] {
  if (a <= b && a <= c) return [a, b, c];
  return b <= c ? [b, c, a] : [c, a, b];
}

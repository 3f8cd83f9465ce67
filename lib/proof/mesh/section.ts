import type { Mesh } from '../../solid/mesh.js';

/** A closed outline where a plane z = const cuts a body: the solid lies to the left of it, so that holes run clockwise. */
export interface SectionLoop {
  points: [number, number][];
  /** Of the triangle that each side, from its point to the next, was cut from. */
  triangles: number[];
}

/**
 * Outlines of a closed body at a height. Corners exactly at the height count as below it, so every outline closes.
 * @param z mm
 */
export function sectionAt({ positions: p, triangles }: Mesh, z: number): SectionLoop[] {
  const count = p.length / 3;
  const sides = new Map<number, { to: number; point: [number, number]; triangle: number }>();
  for (let t = 0; t < triangles.length; t += 3) {
    let from = -1;
    let to = -1;
    let point: [number, number] = [0, 0];
    for (let k = 0; k < 3; k++) {
      const a = triangles[t + k];
      const b = triangles[t + ((k + 1) % 3)];
      const above = p[3 * a + 2] > z;
      if (above === p[3 * b + 2] > z) continue;
      // Seen from outside the side that rises is to the right.
      if (above) {
        from = b * count + a;
        point = pointAt(p, b, a, z);
      } else to = a * count + b;
    }
    if (from >= 0) sides.set(from, { to, point, triangle: t / 3 });
  }
  const loops: SectionLoop[] = [];
  for (const first of sides.keys()) {
    const loop: SectionLoop = { points: [], triangles: [] };
    for (let side = sides.get(first), at = first; side; side = sides.get(at)) {
      sides.delete(at);
      loop.points.push(side.point);
      loop.triangles.push(side.triangle);
      at = side.to;
    }
    if (loop.points.length) loops.push(loop);
  }
  return loops;
}

/** Where an edge passes a height, from its lower corner whichever way it runs. */
function pointAt(p: Float64Array, low: number, high: number, z: number): [number, number] {
  const share = (z - p[3 * low + 2]) / (p[3 * high + 2] - p[3 * low + 2]);
  return [0, 1].map((k) => p[3 * low + k] + share * (p[3 * high + k] - p[3 * low + k])) as [number, number];
}

/** Whether a point lies within an outline, by the half-open rule: every side decides alike for both of its ends. */
export function isInside(outline: readonly (readonly [number, number])[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i];
    const [bx, by] = outline[j];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

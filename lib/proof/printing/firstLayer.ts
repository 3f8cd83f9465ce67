import type { Mesh, Part } from '../../solid/mesh.js';
import { planetaryPairs } from '../bodyPairs.js';
import { type LeastDistance, leastDistance } from '../mesh/leastDistance.js';
import { triangleTree } from '../mesh/triangleTree.js';

/** The least distance between two parts within the first layer, as drawn. */
export interface FirstLayerGap {
  between: [string, string];
  /** mm. */
  distance: number;
}

/**
 * The nearest two parts within the first layer; null when all are farther apart than `within`.
 * Neighbours are the sun and each planet, each planet and the ring, planets side by side, and a carrier with all; of
 * parts without a sun, such as a pinion and its bar, every two.
 * @param layer height of the first layer, mm
 * @param within the largest distance of interest, mm
 */
export function firstLayerGap(parts: readonly Part[], layer: number, within: number): FirstLayerGap | null {
  const trees = parts.map(({ mesh }) => {
    const walls = wallsBelow(mesh, layer);
    return walls.triangles.length ? triangleTree(walls) : null;
  });
  const at = new Map(parts.map(({ name }, i) => [name, i]));
  const gears = parts.map(({ name }) => name).filter((name) => name !== 'carrier');
  const beside = at.has('carrier') ? gears.map((gear) => [gear, 'carrier']) : [];
  const mates = at.has('sun') ? planetaryPairs(parts).map(({ between }) => between) : everyPair(gears);
  const pairs = [...mates, ...beside].map(([a, b]) => [at.get(a)!, at.get(b)!]);
  let nearest: FirstLayerGap | null = null;
  for (const [a, b] of pairs) {
    const [one, other] = [trees[a], trees[b]];
    if (!one || !other) continue;
    const found: LeastDistance | null = leastDistance(one, other, nearest?.distance ?? within);
    if (found && (nearest === null || found.distance < nearest.distance))
      nearest = { between: [parts[a].name, parts[b].name], distance: found.distance };
  }
  return nearest;
}

function everyPair(names: readonly string[]): [string, string][] {
  return names.flatMap((a, i) => names.slice(i + 1).map((b): [string, string] => [a, b]));
}

/**
 * The part of a surface that stands between the bed and a height, cut where triangles pass the height. Faces that
 * lie flat on the bed are left out: two parts side by side are never nearest inside them. Cut edges keep one vertex
 * for both of their triangles, so that what was connected still is.
 */
export function wallsBelow({ positions, triangles }: Mesh, height: number): Mesh {
  const kept: number[] = [];
  const faces: number[] = [];
  const vertices = new Map<number, number>();
  const count = positions.length / 3;
  const heightOf = (v: number) => positions[3 * v + 2];
  const isBelow = (v: number) => heightOf(v) <= height;
  const vertex = (key: number, place: (axis: number) => number) => {
    const known = vertices.get(key) ?? kept.push(place(0), place(1), place(2)) / 3 - 1;
    vertices.set(key, known);
    return known;
  };
  const keep = (v: number) => vertex(v, (axis) => positions[3 * v + axis]);
  const cut = (below: number, above: number) => {
    const share = (height - heightOf(below)) / (heightOf(above) - heightOf(below));
    return vertex(count * (1 + below) + above, (axis) => {
      const [from, to] = [positions[3 * below + axis], positions[3 * above + axis]];
      return axis === 2 ? height : from + share * (to - from);
    });
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (!corners.some(isBelow) || corners.every((v) => heightOf(v) === 0)) continue;
    const outline = corners.flatMap((v, i) => {
      const next = corners[(i + 1) % 3];
      const here = isBelow(v) ? [keep(v)] : [];
      if (isBelow(v) === isBelow(next)) return here;
      return [...here, isBelow(v) ? cut(v, next) : cut(next, v)];
    });
    for (let i = 2; i < outline.length; i++) faces.push(outline[0], outline[i - 1], outline[i]);
  }
  return { positions: Float64Array.from(kept), triangles: Uint32Array.from(faces) };
}

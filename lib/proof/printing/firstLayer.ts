import type { Mesh, Part } from '../../solid/mesh.js';
import { changedPairs } from '../bodyPairs.js';
import { type LeastDistance, leastDistance } from '../mesh/leastDistance.js';
import { triangleTree } from '../mesh/triangleTree.js';

/** The least distance between two parts within the first layer, as drawn. */
export interface FirstLayerGap {
  between: [string, string];
  /** mm. */
  distance: number;
}

/**
 * The nearest two parts within the first layer; null when all are farther apart than `within`. Every two are looked at:
 * whatever a script joins to one may come near any other.
 * @param layer height of the first layer, mm
 * @param within the largest distance of interest, mm
 */
export function firstLayerGap(parts: readonly Part[], layer: number, within: number): FirstLayerGap | null {
  const trees = parts.map(({ mesh }) => {
    const walls = wallsBelow(mesh, layer);
    return walls.triangles.length ? triangleTree(walls) : null;
  });
  const at = new Map(parts.map(({ name }, i) => [name, i]));
  const pairs = changedPairs(parts, [], () => true).map(({ between: [a, b] }) => [at.get(a)!, at.get(b)!]);
  let nearest: FirstLayerGap | null = null;
  for (const [a, b] of pairs) {
    const one = trees[a];
    const other = trees[b];
    if (!one || !other) continue;
    const found: LeastDistance | null = leastDistance(one, other, nearest?.distance ?? within);
    if (found && (nearest === null || found.distance < nearest.distance))
      nearest = { between: [parts[a].name, parts[b].name], distance: found.distance };
  }
  return nearest;
}

/**
 * The part of a surface that stands between the bed and a height, cut where triangles pass the height. Faces that
 * lie flat on the bed are left out: two parts side by side are never nearest inside them. Cut edges keep one vertex
 * for both of their triangles, so that what was connected still is.
 */
export function wallsBelow(mesh: Mesh, height: number): Mesh {
  const { positions, triangles } = mesh;
  const draft: Draft = { mesh, height, kept: [], vertices: new Map() };
  const faces: number[] = [];
  const outline: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = positions[3 * triangles[t] + 2];
    const b = positions[3 * triangles[t + 1] + 2];
    const c = positions[3 * triangles[t + 2] + 2];
    if (!(Math.min(a, b, c) <= height) || (a === 0 && b === 0 && c === 0)) continue;
    outline.length = 0;
    for (let i = 0; i < 3; i++) addSide(draft, triangles[t + i], triangles[t + ((i + 1) % 3)], outline);
    for (let i = 2; i < outline.length; i++) faces.push(outline[0], outline[i - 1], outline[i]);
  }
  return { positions: Float64Array.from(draft.kept), triangles: Uint32Array.from(faces) };
}

/** What is kept of a mesh: coordinates, and the number of each kept vertex or cut edge by its key. */
interface Draft {
  mesh: Mesh;
  height: number;
  kept: number[];
  vertices: Map<number, number>;
}

/** Adds to an outline what is below of the side from `v` to before `next`: its start, and where it is cut. */
function addSide(draft: Draft, v: number, next: number, outline: number[]): void {
  const { positions } = draft.mesh;
  const below = positions[3 * v + 2] <= draft.height;
  if (below) outline.push(keptVertex(draft, v));
  if (below === positions[3 * next + 2] <= draft.height) return;
  outline.push(below ? cutEdge(draft, v, next) : cutEdge(draft, next, v));
}

function keptVertex({ mesh: { positions }, kept, vertices }: Draft, v: number): number {
  const known = vertices.get(v);
  if (known !== undefined) return known;
  const number = kept.push(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]) / 3 - 1;
  vertices.set(v, number);
  return number;
}

function cutEdge(
  { mesh: { positions }, height, kept, vertices }: Draft,
  below: number,
  above: number,
): number {
  const key = (positions.length / 3) * (1 + below) + above;
  const known = vertices.get(key);
  if (known !== undefined) return known;
  const from = 3 * below;
  const to = 3 * above;
  const share = (height - positions[from + 2]) / (positions[to + 2] - positions[from + 2]);
  const x = positions[from] + share * (positions[to] - positions[from]);
  const y = positions[from + 1] + share * (positions[to + 1] - positions[from + 1]);
  const number = kept.push(x, y, height) / 3 - 1;
  vertices.set(key, number);
  return number;
}

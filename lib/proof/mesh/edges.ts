import type { Mesh } from '../../solid/mesh.js';
import { flatTriangles } from './flatTriangles.js';
import { guardIndices } from './guard.js';
import { repeatedPositions } from './repeatedPositions.js';
import { rootOf, singles, unite } from './shells.js';

/** What a mesh's connections are like. Every count is 0 for a sound closed mesh, except the last four. */
export interface EdgeDefects {
  /** Edges with one triangle only. */
  open: number;
  /** Edges with more than two triangles. */
  doubled: number;
  /** Edges whose two triangles run along them in the same direction. */
  misoriented: number;
  /** Vertices at exactly the place of an earlier vertex. */
  duplicateVertices: number;
  /** Vertices that no triangle uses. */
  unusedVertices: number;
  /** Triangles that name a vertex twice, or whose corners lie on one line (see `flatTriangles`). */
  degenerateTriangles: number;
  /** Vertices whose triangles form more than one fan: two cones tip to tip, for example. */
  nonManifoldVertices: number;
  /** True when none of the counts above, other than duplicate and unused vertices, is above 0. */
  watertight: boolean;
  /** Pieces of the surface that are connected through edges. */
  shells: number;
  /** Euler characteristic: used vertices − edges + triangles. */
  eulerCharacteristic: number;
  /** Handles of all shells together, shells − χ/2: 0 for a sphere, 1 for a ring; null unless watertight. */
  genus: number | null;
}

/**
 * Checks that every directed edge occurs exactly once and so does its reverse, and what goes with it.
 * Edges are gathered by their lower vertex and sorted within each; time grows in proportion to the triangles.
 * Holds for meshes up to about 10 million triangles. Positions that are not finite make degenerate triangles.
 * @throws Refusal when indices do not come in threes or one points past the vertices
 */
export function edgeDefects(mesh: Mesh): EdgeDefects {
  guardIndices(mesh);
  const vertices = mesh.positions.length / 3;
  const { triangles } = mesh;
  const start = groupStarts(triangles, vertices);
  const keys = sortedKeys(triangles, start);
  const fans = singles(triangles.length);
  const shells = singles(triangles.length / 3);
  const counts = { open: 0, doubled: 0, misoriented: 0, edges: 0 };
  const edgeKey = 2 * triangles.length;
  for (let vertex = 0; vertex < vertices; vertex++) {
    for (let from = start[vertex]; from < start[vertex + 1]; ) {
      const other = Math.floor(keys[from] / edgeKey);
      let to = from + 1;
      while (to < start[vertex + 1] && Math.floor(keys[to] / edgeKey) === other) to++;
      countEdge(keys, from, to, triangles.length, counts);
      joinEdge(keys, from, to, triangles, fans, shells);
      from = to;
    }
  }
  return summary(mesh, counts, fans, shells);
}

interface EdgeCounts {
  open: number;
  doubled: number;
  misoriented: number;
  edges: number;
}

/** Vertex v's edges, those whose lower vertex it is, will be at places [v] up to, not including, [v + 1]. */
function groupStarts(triangles: Uint32Array, vertices: number): Uint32Array {
  const start = new Uint32Array(vertices + 1);
  for (let corner = 0; corner < triangles.length; corner++)
    start[Math.min(triangles[corner], triangles[after(corner)]) + 1]++;
  for (let vertex = 0; vertex < vertices; vertex++) start[vertex + 1] += start[vertex];
  return start;
}

/**
 * One key for every directed edge: (2 × higher vertex + direction) × corners + corner it starts from, where the
 * direction is 0 when it runs upward. Grouped by lower vertex and ascending within a group, so the uses of one
 * edge stand together.
 */
function sortedKeys(triangles: Uint32Array, start: Uint32Array): Float64Array {
  const corners = triangles.length;
  const keys = new Float64Array(corners);
  const next = start.slice();
  for (let corner = 0; corner < corners; corner++) {
    const from = triangles[corner];
    const to = triangles[after(corner)];
    const falls = from > to ? 1 : 0;
    keys[next[falls ? to : from]++] = (2 * (falls ? from : to) + falls) * corners + corner;
  }
  for (let vertex = 0; vertex + 1 < start.length; vertex++) sortRange(keys, start[vertex], start[vertex + 1]);
  return keys;
}

/** The typed array's own sort costs a call; most groups are a handful of edges. */
const FEW = 24;

function sortRange(keys: Float64Array, from: number, to: number): void {
  if (to - from > FEW) {
    keys.subarray(from, to).sort();
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const key = keys[i];
    let hole = i;
    for (; hole > from && keys[hole - 1] > key; hole--) keys[hole] = keys[hole - 1];
    keys[hole] = key;
  }
}

function countEdge(keys: Float64Array, from: number, to: number, corners: number, counts: EdgeCounts): void {
  counts.edges++;
  if (to - from === 1) counts.open++;
  else if (to - from > 2) counts.doubled++;
  else if (Math.floor(keys[from] / corners) === Math.floor(keys[from + 1] / corners)) counts.misoriented++;
}

/** Joins the triangles along an edge into one shell and, across an edge of two triangles, their fans at both ends. */
function joinEdge(
  keys: Float64Array,
  from: number,
  to: number,
  triangles: Uint32Array,
  fans: Uint32Array,
  shells: Uint32Array,
): void {
  const first = keys[from] % triangles.length;
  for (let use = from + 1; use < to; use++) {
    const second = keys[use] % triangles.length;
    unite(shells, Math.floor(first / 3), Math.floor(second / 3));
    if (to - from > 2) continue;
    const alike = triangles[first] === triangles[second];
    unite(fans, first, alike ? second : after(second));
    unite(fans, after(first), alike ? after(second) : second);
  }
}

/** The next corner of the same triangle. */
function after(corner: number): number {
  return corner % 3 === 2 ? corner - 2 : corner + 1;
}

function summary(mesh: Mesh, counts: EdgeCounts, fans: Uint32Array, shellOf: Uint32Array): EdgeDefects {
  const { open, doubled, misoriented } = counts;
  const { unused, nonManifold } = countFans(mesh, fans);
  const degenerateTriangles = flatTriangles(mesh);
  let shells = 0;
  for (let i = 0; i < shellOf.length; i++) if (rootOf(shellOf, i) === i) shells++;
  const used = mesh.positions.length / 3 - unused;
  const eulerCharacteristic = used - counts.edges + mesh.triangles.length / 3;
  const watertight = open + doubled + misoriented + degenerateTriangles + nonManifold === 0 && shells > 0;
  return {
    open,
    doubled,
    misoriented,
    duplicateVertices: repeatedPositions(mesh.positions),
    unusedVertices: unused,
    degenerateTriangles,
    nonManifoldVertices: nonManifold,
    watertight,
    shells,
    eulerCharacteristic,
    genus: watertight ? shells - eulerCharacteristic / 2 : null,
  };
}

function countFans(
  { positions, triangles }: Mesh,
  fans: Uint32Array,
): { unused: number; nonManifold: number } {
  const fansAt = new Uint32Array(positions.length / 3);
  for (let corner = 0; corner < triangles.length; corner++)
    if (rootOf(fans, corner) === corner) fansAt[triangles[corner]]++;
  let unused = 0;
  let nonManifold = 0;
  for (const count of fansAt) {
    if (count === 0) unused++;
    if (count > 1) nonManifold++;
  }
  return { unused, nonManifold };
}

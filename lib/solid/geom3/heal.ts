import { type Edge, edgesOf, findFlaws, type Loop, splitLoop } from './loops.js';

/** Each round may uncover junctions that a shorter edge has now; real models need two or three. */
const MOST_ROUNDS = 12;

/**
 * Mends T-junctions: where a vertex of one open edge lies on another open edge, it is put into that edge.
 * Nothing moves. Loops that are closed already are handed back as they are.
 * @param positions x, y, z of the vertices, mm
 * @param tolerance largest distance of a vertex from the edge it is put into, mm
 */
export function healJunctions(
  loops: readonly Loop[],
  positions: Float64Array,
  tolerance: number,
): readonly Loop[] {
  let healed = loops;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { open } = findFlaws(healed, positions.length / 3);
    const inserts = findJunctions(open, positions, tolerance);
    if (inserts.size === 0) break;
    healed = healed.flatMap((loop) => insertInto(loop, inserts));
  }
  return healed;
}

type Inserts = Map<string, number[]>;
const keyOf = ([from, to]: Edge): string => `${from} ${to}`;

function insertInto(loop: Loop, inserts: Inserts): readonly Loop[] {
  const longer: number[] = [];
  for (const edge of edgesOf(loop)) longer.push(edge[0], ...(inserts.get(keyOf(edge)) ?? []));
  return longer.length === loop.length ? [loop] : splitLoop(longer);
}

/** For every open edge the vertices of other open edges that lie on it, in order along it. */
function findJunctions(open: readonly Edge[], positions: Float64Array, tolerance: number): Inserts {
  const inserts: Inserts = new Map();
  const byX = [...new Set(open.flat())].sort((a, b) => positions[3 * a] - positions[3 * b]);
  const xs = Float64Array.from(byX, (vertex) => positions[3 * vertex]);
  for (const edge of open) {
    const [x0, x1] = [positions[3 * edge[0]], positions[3 * edge[1]]];
    const found: { vertex: number; along: number }[] = [];
    for (let i = firstAtLeast(xs, Math.min(x0, x1) - tolerance); i < xs.length; i++) {
      if (xs[i] > Math.max(x0, x1) + tolerance) break;
      if (byX[i] === edge[0] || byX[i] === edge[1]) continue;
      const along = placeOn(edge, byX[i], positions, tolerance);
      if (along !== null) found.push({ vertex: byX[i], along });
    }
    found.sort((a, b) => a.along - b.along);
    if (found.length > 0)
      inserts.set(
        keyOf(edge),
        found.map(({ vertex }) => vertex),
      );
  }
  return inserts;
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where on the edge the vertex lies (0 … 1, ends left out), or null when it is farther off than allowed. */
function placeOn([from, to]: Edge, vertex: number, p: Float64Array, tolerance: number): number | null {
  const [a, b, v] = [3 * from, 3 * to, 3 * vertex];
  const [ex, ey, ez] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [wx, wy, wz] = [p[v] - p[a], p[v + 1] - p[a + 1], p[v + 2] - p[a + 2]];
  const along = (wx * ex + wy * ey + wz * ez) / (ex * ex + ey * ey + ez * ez);
  if (!(along > 0 && along < 1)) return null;
  const off = Math.hypot(wx - along * ex, wy - along * ey, wz - along * ez);
  return off <= tolerance ? along : null;
}

/** A polygon as indices of its vertices, counter-clockwise seen from outside. */
export type Loop = readonly number[];

/** A directed edge, from vertex to vertex. */
export type Edge = readonly [from: number, to: number];

/** What keeps loops from bounding a solid. */
export interface Flaws {
  /** Directed edges that occur more often than their reverse. */
  open: Edge[];
  /** Edges at which more than two polygons meet. */
  crowded: Edge[];
}

/** Finds what is open and what is not 2-manifold. Cost: linear. */
export function findFlaws(loops: readonly Loop[], vertices: number): Flaws {
  const counts = new Map<number, number>();
  const keyOf = (from: number, to: number): number => from * vertices + to;
  for (const loop of loops) {
    for (const [from, to] of edgesOf(loop)) {
      const key = keyOf(from, to);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  const flaws: Flaws = { open: [], crowded: [] };
  for (const [key, count] of counts) {
    const edge: Edge = [Math.floor(key / vertices), key % vertices];
    const back = counts.get(keyOf(edge[1], edge[0])) ?? 0;
    if (count > back) flaws.open.push(edge);
    else if (count > 1) flaws.crowded.push(edge);
  }
  return flaws;
}

/** The edges of a loop in order. */
export function* edgesOf(loop: Loop): Generator<Edge> {
  for (let i = 0; i < loop.length; i++) yield [loop[i], loop[i + 1 < loop.length ? i + 1 : 0]];
}

/**
 * A loop that passes a vertex twice, taken apart there; pieces of fewer than three vertices vanish. Every
 * edge that vanishes takes its reverse along, so that what was closed stays closed.
 */
export function splitLoop(loop: Loop): Loop[] {
  const pieces: Loop[] = [];
  const path: number[] = [];
  for (const vertex of loop) {
    const before = path.indexOf(vertex);
    if (before >= 0) keep(pieces, path.splice(before));
    path.push(vertex);
  }
  keep(pieces, path);
  return pieces;
}

function keep(pieces: Loop[], piece: Loop): void {
  if (piece.length > 2) pieces.push(piece);
}

import type { Mesh, Part } from '../../solid/mesh.js';
import { type Grid, gridOver, markSection, markTriangle } from './grid.js';

/**
 * What `prints without support` means for a flat underside: a place of it is carried where some body lies one or two
 * layers below it (as on the interface of a slicer's own supports, from which it comes free), and bridged where a straight
 * strand no longer than a bridge runs through it from one carried place to another. Common practice, no source.
 */
export interface UndersideLimits {
  /** Only what lies above this height counts, mm: the first layer lies on the bed. */
  above: number;
  /** Layer height, mm. */
  layer: number;
  /** Longest bridge, mm. */
  bridge: number;
  /** Width of a line, mm: one laid along the edge of what is carried or bridged sticks to it. */
  lineWidth: number;
}

/** Flat undersides of one part that are neither carried nor bridged. */
export interface Undersides {
  /** mm². */
  area: number;
  /** Longest bridge that is needed, mm; 0 for none. */
  longestBridge: number;
  /** Middle of one place that hangs free, mm; null for none. */
  at: [number, number, number] | null;
}

/** Layers over another body that are carried by it. */
export const CARRIED_LAYERS = 2;
/** Side of the squares in which undersides are looked at, mm, and the most of them along a side of the face. */
const CELL = 0.2;
const MOST_CELLS = 600;
/** Directions in which strands may be laid. */
const WAYS = 12;

/** Whether a triangle is part of a flat underside: level, facing down. */
export function isUnderside(p: Float64Array, a: number, b: number, c: number): boolean {
  const level = Math.abs(p[a + 2] - p[b + 2]) < FLAT && Math.abs(p[a + 2] - p[c + 2]) < FLAT;
  return level && turn(p, a, b, c) < 0;
}

/** Heights closer together than this, mm, are one: rounding of doubles. */
const FLAT = 1e-7;

/**
 * Measures the flat undersides of one part among all that are printed with it.
 * @param parts all of them, itself included, as they stand on the bed
 */
export function undersidesOf(mesh: Mesh, parts: readonly Part[], limits: UndersideLimits): Undersides {
  const found: Undersides = { area: 0, longestBridge: 0, at: null };
  for (const [z, triangles] of levelsOf(mesh, limits.above))
    measureLevel(mesh, z, triangles, parts, limits, found);
  return found;
}

function levelsOf({ positions: p, triangles }: Mesh, above: number): Map<number, number[]> {
  const levels = new Map<number, number[]>();
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    if (p[a + 2] <= above + FLAT || !isUnderside(p, a, b, c)) continue;
    const z = Math.round(p[a + 2] / (10 * FLAT)) * 10 * FLAT;
    const level = levels.get(z) ?? [];
    level.push(t);
    levels.set(z, level);
  }
  return levels;
}

function measureLevel(
  { positions, triangles }: Mesh,
  z: number,
  level: readonly number[],
  parts: readonly Part[],
  { layer, bridge, lineWidth }: UndersideLimits,
  found: Undersides,
): void {
  const face = gridOver(
    positions,
    level.flatMap((t) => [triangles[t], triangles[t + 1], triangles[t + 2]]),
    CELL,
    MOST_CELLS,
  );
  for (const t of level) markTriangle(face, positions, triangles[t], triangles[t + 1], triangles[t + 2]);
  const carried = { ...face, marks: new Uint8Array(face.marks.length) };
  for (const { mesh } of parts) markSection(carried, mesh, z - (CARRIED_LAYERS + 0.01) * layer);
  const steps = Math.floor(bridge / face.cell);
  const hanging: [number, number][] = [];
  const held = face.marks.map((mark, i) => mark | carried.marks[i]);
  for (let row = 0; row < face.rows; row++)
    for (let column = 0; column < face.columns; column++) {
      const at = row * face.columns + column;
      if (!face.marks[at] || carried.marks[at]) continue;
      const span = shortestStrand(face, carried, column, row, steps);
      if (span !== null) {
        found.longestBridge = Math.max(found.longestBridge, span * face.cell);
        continue;
      }
      held[at] = 0;
      hanging.push([column, row]);
    }
  const beside = neighboursWithin(Math.floor(lineWidth / face.cell));
  for (const [column, row] of hanging) {
    if (beside.some(([dx, dy]) => held[(row + dy) * face.columns + column + dx])) continue;
    found.area += face.cell ** 2;
    found.at ??= [face.x + (column + 0.5) * face.cell, face.y + (row + 0.5) * face.cell, z];
  }
}

function neighboursWithin(reach: number): [number, number][] {
  const steps = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
  return steps
    .flatMap((dy) => steps.map((dx): [number, number] => [dx, dy]))
    .filter(([dx, dy]) => Math.hypot(dx, dy) <= reach);
}

/** Cells of the shortest strand through a place that ends on carried places, no longer than `most`; null for none. */
function shortestStrand(face: Grid, carried: Grid, column: number, row: number, most: number): number | null {
  let shortest: number | null = null;
  for (let way = 0; way < WAYS; way++) {
    const dx = Math.cos((Math.PI * way) / WAYS);
    const dy = Math.sin((Math.PI * way) / WAYS);
    const limit = shortest ?? most;
    const ahead = freeSteps(face, carried, column, row, dx, dy, limit);
    if (ahead === null) continue;
    const behind = freeSteps(face, carried, column, row, -dx, -dy, limit - ahead);
    if (behind !== null) shortest = ahead + behind;
  }
  return shortest;
}

/** Steps until a carried place is reached; null where the face ends before, or the steps do. */
function freeSteps(
  face: Grid,
  carried: Grid,
  column: number,
  row: number,
  dx: number,
  dy: number,
  most: number,
): number | null {
  for (let step = 1; step <= most; step++) {
    const x = Math.round(column + step * dx);
    const y = Math.round(row + step * dy);
    if (x < 0 || y < 0 || x >= face.columns || y >= face.rows) return null;
    const at = y * face.columns + x;
    if (carried.marks[at]) return step;
    if (!face.marks[at]) return null;
  }
  return null;
}

function turn(p: Float64Array, a: number, b: number, c: number): number {
  return (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[b + 1] - p[a + 1]) * (p[c] - p[a]);
}

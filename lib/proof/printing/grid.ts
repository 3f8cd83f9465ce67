import type { Mesh } from '../../solid/mesh.js';

/** Squares over a plane region, row by row from the lowest y on; a square is marked by its middle. Lengths in mm. */
export interface Grid {
  /** Corner of the first square. */
  x: number;
  y: number;
  cell: number;
  columns: number;
  rows: number;
  marks: Uint8Array;
}

/**
 * An empty grid over the given vertices, one square wider all round.
 * @param cell side of a square, larger where there would be more than `most` of them along a side
 */
export function gridOver(p: Float64Array, vertices: readonly number[], cell: number, most: number): Grid {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const v of vertices) {
    minX = Math.min(minX, p[3 * v]);
    maxX = Math.max(maxX, p[3 * v]);
    minY = Math.min(minY, p[3 * v + 1]);
    maxY = Math.max(maxY, p[3 * v + 1]);
  }
  const side = Math.max(cell, (maxX - minX) / most, (maxY - minY) / most);
  const columns = Math.ceil((maxX - minX) / side) + 2;
  const rows = Math.ceil((maxY - minY) / side) + 2;
  return { x: minX - side, y: minY - side, cell: side, columns, rows, marks: new Uint8Array(columns * rows) };
}

/** Marks what lies within a triangle, seen from above. */
export function markTriangle(grid: Grid, p: Float64Array, a: number, b: number, c: number): void {
  const corners = [3 * a, 3 * b, 3 * c];
  const ys = corners.map((at) => p[at + 1]);
  for (const row of rowsWithin(grid, Math.min(...ys), Math.max(...ys))) {
    const y = grid.y + (row + 0.5) * grid.cell;
    const xs: number[] = [];
    corners.forEach((at, i) => {
      const to = corners[(i + 1) % 3];
      if (p[at + 1] > y === p[to + 1] > y) return;
      xs.push(p[at] + ((y - p[at + 1]) / (p[to + 1] - p[at + 1])) * (p[to] - p[at]));
    });
    if (xs.length === 2) markRow(grid, row, Math.min(...xs), Math.max(...xs));
  }
}

/** Marks what lies inside a body at a height. */
export function markSection(grid: Grid, { positions: p, triangles }: Mesh, z: number): void {
  const crossings: number[][] = Array.from({ length: grid.rows }, () => []);
  for (let t = 0; t < triangles.length; t += 3) {
    const ends: [number, number][] = [];
    for (let k = 0; k < 3; k++) {
      const i = 3 * triangles[t + k];
      const j = 3 * triangles[t + ((k + 1) % 3)];
      if (p[i + 2] > z === p[j + 2] > z) continue;
      // Each edge is cut in the same way from both of its triangles.
      const [low, high] = p[i + 2] < p[j + 2] ? [i, j] : [j, i];
      const share = (z - p[low + 2]) / (p[high + 2] - p[low + 2]);
      ends.push([p[low] + share * (p[high] - p[low]), p[low + 1] + share * (p[high + 1] - p[low + 1])]);
    }
    if (ends.length !== 2) continue;
    const [[ax, ay], [bx, by]] = ends;
    for (const row of rowsWithin(grid, Math.min(ay, by), Math.max(ay, by))) {
      const y = grid.y + (row + 0.5) * grid.cell;
      if (ay > y !== by > y) crossings[row].push(ax + ((y - ay) / (by - ay)) * (bx - ax));
    }
  }
  crossings.forEach((xs, row) => {
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) markRow(grid, row, xs[i], xs[i + 1]);
  });
}

function rowsWithin({ y, cell, rows }: Grid, from: number, to: number): number[] {
  const first = Math.max(0, Math.floor((from - y) / cell - 0.5));
  const last = Math.min(rows - 1, Math.ceil((to - y) / cell));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

function markRow({ x, cell, columns, marks }: Grid, row: number, from: number, to: number): void {
  const first = Math.max(0, Math.ceil((from - x) / cell - 0.5));
  const last = Math.min(columns - 1, Math.floor((to - x) / cell - 0.5));
  if (last >= first) marks.fill(1, row * columns + first, row * columns + last + 1);
}

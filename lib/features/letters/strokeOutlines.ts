import type { Point } from '../../stack/contour.js';
import { simplified } from './simplified.js';

/** Squares across a stroke. */
const ACROSS = 8;
/** Crossings keep this share of a square's side from its corners, so that no two coincide. */
const CLEAR = 0.05;
/** Largest distance of an outline from the traced one, in squares. */
const SIMPLER = 0.15;

/**
 * Outlines around lines drawn with a round pen: everything within half a width of a line. Traced over a square grid
 * of the distance from the lines (marching squares), which gives closed outlines that never cross, however the lines
 * meet; booleans of polygons do not always.
 * @param lines open polylines, mm
 * @returns outer outlines counter-clockwise, holes clockwise
 */
export function strokeOutlines(lines: readonly (readonly Point[])[], width: number): Point[][] {
  const segments = lines.flatMap((line) => line.slice(1).map((to, i): [Point, Point] => [line[i], to]));
  if (segments.length === 0) return [];
  const side = width / ACROSS;
  const xs = lines.flat().map(([x]) => x);
  const ys = lines.flat().map(([, y]) => y);
  // Two empty squares around everything; not quite on the grid of the font, whose lines are upright and level.
  const from: Point = [Math.min(...xs) - width / 2 - 2.3 * side, Math.min(...ys) - width / 2 - 2.3 * side];
  const columns = Math.ceil((Math.max(...xs) + width / 2 - from[0]) / side) + 3;
  const rows = Math.ceil((Math.max(...ys) + width / 2 - from[1]) / side) + 3;
  const inside = insideOf(segments, { from, side, columns, rows }, width / 2);
  return traced(inside, columns, rows).map((outline) =>
    simplified(outline, SIMPLER).map(([x, y]): Point => [from[0] + x * side, from[1] + y * side]),
  );
}

/** Where the field changes sign, in squares from its first corner; what is above 0 lies to the left. */
function traced(field: Float64Array, columns: number, rows: number): Point[][] {
  // Crossings are known by the grid edge they lie on: 2 × its lower corner, and 1 more for an upright one.
  const next = new Map<number, number>();
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) {
      const corner = j * columns + i;
      const corners = [corner, corner + 1, corner + columns + 1, corner + columns];
      const edges = [2 * corner, 2 * (corner + 1) + 1, 2 * (corner + columns), 2 * corner + 1];
      const isIn = corners.map((at) => field[at] > 0);
      for (let k = 0; k < 4; k++) {
        if (!isIn[k] || isIn[(k + 1) % 4]) continue;
        // From where the square's edge leaves what is inside, back around to where it came in.
        let back = k;
        while (isIn[back]) back = (back + 3) % 4;
        next.set(edges[k], edges[back]);
      }
    }
  const outlines: Point[][] = [];
  for (const start of [...next.keys()]) {
    const outline: Point[] = [];
    for (let at = start; next.has(at); ) {
      outline.push(crossing(field, columns, at));
      const to = next.get(at)!;
      next.delete(at);
      at = to;
    }
    if (outline.length) outlines.push(outline);
  }
  return outlines;
}

function crossing(field: Float64Array, columns: number, edge: number): Point {
  const corner = Math.floor(edge / 2);
  const upright = edge % 2 === 1;
  const [a, b] = [field[corner], field[corner + (upright ? columns : 1)]];
  const share = Math.min(1 - CLEAR, Math.max(CLEAR, a / (a - b)));
  const [x, y] = [corner % columns, Math.floor(corner / columns)];
  return upright ? [x, y + share] : [x + share, y];
}

/** A grid of squares: its first corner, mm, their side, mm, and how many corners there are. */
interface Grid {
  from: Point;
  side: number;
  columns: number;
  rows: number;
}

/**
 * How far every corner lies inside of the strokes, mm. Corners more than a square outside only need to be outside: each
 * segment is asked by those alone that it may be near to.
 */
function insideOf(segments: readonly [Point, Point][], { from, side, columns, rows }: Grid, radius: number) {
  const inside = new Float64Array(columns * rows).fill(-Number.MAX_VALUE);
  const near = radius + 2 * side;
  for (const [[ax, ay], [bx, by]] of segments) {
    const first = (a: number, b: number, start: number) =>
      Math.max(0, Math.floor((Math.min(a, b) - near - start) / side));
    const last = (a: number, b: number, start: number, count: number) =>
      Math.min(count - 1, Math.ceil((Math.max(a, b) + near - start) / side));
    const [lastRow, lastColumn] = [last(ay, by, from[1], rows), last(ax, bx, from[0], columns)];
    for (let j = first(ay, by, from[1]); j <= lastRow; j++)
      for (let i = first(ax, bx, from[0]); i <= lastColumn; i++) {
        const at = j * columns + i;
        const depth = radius - distanceTo(from[0] + i * side, from[1] + j * side, ax, ay, bx, by);
        if (depth > inside[at]) inside[at] = depth;
      }
  }
  return inside;
}

function distanceTo(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
